// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Reading;

/**
 * How to set the machine for a plan: the target mid-screen, with at least 10 mm in view below it, and the focus at its
 * depth. Source: common practice, no source.
 *
 * @param imagingDepthMm {@code max(2 depth, depth + 10)}
 * @param focusDepthMm the target's depth
 */
public record SetUp(Reading imagingDepthMm, Reading focusDepthMm, String text) {
    private static final double BELOW_TARGET_MM = 10;

    public static SetUp of(Plan plan) {
        Reading depth = plan.readings().of(PlanQuantity.TARGET_DEPTH);
        return depth.fold(SetUp::at, why -> new SetUp(why, why, "Without a target depth there is nothing to set."));
    }

    private static SetUp at(Reading.Seen depth) {
        boolean middle = depth.value() >= BELOW_TARGET_MM;
        Reading.Seen imaging = middle
                ? new Reading.Seen(2 * depth.value(), 2 * depth.standardUncertainty())
                : new Reading.Seen(depth.value() + BELOW_TARGET_MM, depth.standardUncertainty());
        return new SetUp(
                imaging,
                depth,
                "Set the imaging depth to about " + Words.mm(imaging.value())
                        + ", so that the target lies mid-screen or above with 10 mm in view below it; set the focus, if there"
                        + " is one, to " + Words.mm(depth.value()) + ".");
    }
}
