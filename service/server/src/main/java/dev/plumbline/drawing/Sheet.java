// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.List;

/**
 * A drawing ready to be written out, in one unit (a column of the frame).
 *
 * @param canvas everything there is
 * @param stage the picture with its margins; what is drawn there is cut at its border
 * @param picture where the frame goes
 * @param scale pixels of output per unit
 * @param ground drawn below the frame
 * @param onStage drawn on the frame and its margins, in this order
 * @param beside drawn outside the stage
 */
record Sheet(
        Box canvas,
        Box stage,
        Box picture,
        double scale,
        Palette palette,
        String title,
        String description,
        List<Element> ground,
        List<Element> onStage,
        List<Element> beside) {
    Sheet {
        ground = List.copyOf(ground);
        onStage = List.copyOf(onStage);
        beside = List.copyOf(beside);
    }
}
