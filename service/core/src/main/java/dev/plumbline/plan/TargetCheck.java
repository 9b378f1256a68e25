// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.ProbeFrame;
import dev.plumbline.geometry.Spot;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import org.apache.commons.math3.RealFieldElement;

/** Refuses a target that no needle is to reach: outside the tissue, or inside a marked structure. */
final class TargetCheck {
    private static final String POINTER = "/marks/target";

    private TargetCheck() {}

    static <T extends RealFieldElement<T>> void inTissue(InPlaneScene<T> scene) {
        Spot target = scene.targetSpot();
        belowSkinLine(target.w());
        if (!scene.targetInTissue()) {
            throw new Refusal(new Problem.TargetUnreachable(
                    POINTER,
                    "By the skin stated in /probe/skinBeyondProbe the target lies outside the tissue.",
                    "Mark the target in the tissue, or state the skin as it is."));
        }
        if (scene.curvedFace().filter(face -> face.holds(target)).isPresent()) {
            throw new Refusal(new Problem.TargetUnreachable(
                    POINTER,
                    "The target lies above the probe's curved face.",
                    "Mark the target in the tissue, or mend /probe/midpoint or /probe/arcRadiusMm."));
        }
        scene.obstacles().hazards().forEach(hazard -> outside(hazard.nominal(), target, "hazard"));
        scene.obstacles().nerves().forEach(nerve -> outside(nerve.nominal(), target, "nerve"));
    }

    /** Across the image plane the skin's shape beyond the probe does not matter. */
    static <T extends RealFieldElement<T>> void inTissue(
            PointMm<T> target, Obstacles.Marked<T> marked, ProbeFrame<T> axes) {
        Spot spot = MeasuredObstacle.spot(target);
        belowSkinLine(spot.w());
        marked.hazards().forEach(hazard -> outside(nominal(hazard, axes), spot, "hazard"));
        marked.nerves().forEach(nerve -> outside(nominal(nerve, axes), spot, "nerve"));
    }

    private static <T extends RealFieldElement<T>> Obstacle nominal(MarkedShape<T> shape, ProbeFrame<T> axes) {
        return MeasuredObstacle.of(shape, axes).nominal();
    }

    private static void belowSkinLine(double depthMm) {
        if (depthMm <= Intervals.TOLERANCE_MM) {
            throw new Refusal(new Problem.TargetUnreachable(
                    POINTER,
                    "The target lies on or above the skin line.",
                    "Mark the target in the tissue, or mark the skin where it is; for a frame shown probe-down set"
                            + " /probe/imageInverted."));
        }
    }

    private static void outside(Obstacle obstacle, Spot target, String kind) {
        if (obstacle.holds(target)) {
            throw new Refusal(new Problem.TargetUnreachable(
                    POINTER,
                    "The target lies inside the " + kind + " \"" + obstacle.name() + "\".",
                    "Move it to where the tip should stop."));
        }
    }
}
