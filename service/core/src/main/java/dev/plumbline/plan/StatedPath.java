// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import org.apache.commons.math3.util.Decimal64;

/** Turns a person's intent into the decision that fixes the path. */
final class StatedPath {
    private StatedPath() {}

    static Decision of(Intent intent, InPlaneScene<Decimal64> scene) {
        if (intent instanceof Intent.AngleToSkin angle) {
            return new Decision.Angle(Math.toRadians(angle.degrees()));
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

    private static Decision entry(double along, String pointer, InPlaneScene<Decimal64> scene) {
        double target = scene.target().x().getReal();
        if (along < target - Intervals.TOLERANCE_MM) {
            String where = scene.midpointKnown() ? "the midpoint" : "the target";
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    "This entry lies beyond the target as seen from the needle's side.",
                    "Enter at least " + Words.mm(Math.ceil(target)) + " from " + where
                            + ", or state the other side in /probe/needleSide."));
        }
        return new Decision.Entry(Math.max(along, target));
    }
}
