// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Gradient;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;

/** Turns a person's intent into the decision that fixes the path. */
final class StatedPath {
    private StatedPath() {}

    static Decision of(Intent intent, InPlaneScene<Gradient> scene) {
        if (intent instanceof Intent.AngleToSkin angle) {
            Decision decision = new Decision.Angle(Math.toRadians(angle.degrees()));
            if (InPlanePath.find(scene, decision).isEmpty()) {
                throw new Refusal(new Problem.InvalidValue(
                        "/intent/angleToSkinDeg",
                        "By the skin stated in /probe/skinBeyondProbe no skin is met at this angle.",
                        "State a steeper angle, or the skin as it is."));
            }
            return decision;
        }
        if (intent instanceof Intent.EntryDistance distance) {
            if (!scene.midpointKnown()) {
                throw new Refusal(new Problem.MissingField(
                        "/probe/midpoint",
                        "Mark the midpoint of the transducer face; the entry distance is measured from it."));
            }
            return entry(distance.mm(), "/intent/entryDistanceMm", scene);
        }
        if (intent instanceof Intent.EntryMark mark) {
            double along = scene.axes()
                    .ofDisplay(scene.frame().scale().onDisplay(NominalMarks.of(mark.at())))
                    .x()
                    .getReal();
            return entry(along, "/intent/entry", scene);
        }
        throw new IllegalArgumentException("A puncture distance does not fix a path in the image plane.");
    }

    private static Decision entry(double along, String pointer, InPlaneScene<Gradient> scene) {
        double target = scene.target().x().getReal();
        double depth = scene.target().y().getReal();
        if (along < target - Intervals.TOLERANCE_MM) {
            String where = scene.midpointKnown() ? "the midpoint" : "the target";
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    "This entry lies beyond the target as seen from the needle's side.",
                    "Enter at least " + Words.mm(Math.ceil(target)) + " from " + where
                            + ", or state the other side in /probe/needleSide."));
        }
        double entry = Math.max(along, target);
        if (!scene.skin().reachesTo(entry)
                || scene.skin().depthAt(Gradient.constant(entry)).getReal() >= depth) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    "By the skin stated in /probe/skinBeyondProbe there is no skin above the target's depth at this entry.",
                    "Enter nearer to the probe, or state the skin as it is."));
        }
        return new Decision.Entry(entry);
    }
}
