// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.PixelSize;
import java.util.Locale;

/** How a scale is named beside the picture. */
final class FrameScale {
    private static final double SQUARE_WITHIN = 0.01;

    private FrameScale() {}

    /** Such as "Scale: ultrasound region 1, 0.0594 mm per pixel." */
    static String words(Calibration calibration) {
        PixelSize size = calibration.pixel();
        String across = String.format(Locale.ROOT, "%.4f", size.mmPerColumn());
        String down = String.format(Locale.ROOT, "%.4f", size.mmPerRow());
        String length =
                across.equals(down) ? across + " mm per pixel" : across + " mm per column, " + down + " mm per row";
        return "Scale: " + source(calibration) + ", " + length + ".";
    }

    private static String source(Calibration calibration) {
        return switch (calibration.source()) {
            case ULTRASOUND_REGIONS ->
                calibration
                        .region()
                        .map(region -> "ultrasound region " + region.number())
                        .orElse("ultrasound regions");
            case PIXEL_SPACING -> "pixel spacing of the object";
            case STATED -> "stated by a person";
        };
    }

    static boolean isSquare(PixelSize size) {
        return Math.abs(size.mmPerRow() / size.mmPerColumn() - 1) <= SQUARE_WITHIN;
    }
}
