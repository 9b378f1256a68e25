// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.UltrasoundRegion;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Which scale a drawing of a frame uses, and how it is named. */
final class FrameScale {
    private FrameScale() {}

    static Calibration at(FrameGeometry frame, PointPx target) {
        Optional<UltrasoundRegion> region = frame.regions().stream()
                .filter(candidate ->
                        candidate.whyUnusable().isEmpty() && candidate.bounds().contains(target))
                .min(Comparator.comparing((UltrasoundRegion candidate) -> !candidate.hasPriority()));
        return region.map(found -> new Calibration(
                        Calibration.Source.ULTRASOUND_REGIONS,
                        found.pixelSize(),
                        Optional.of(found.bounds()),
                        List.of()))
                .or(() -> spacing(frame))
                .orElseThrow(() -> new IllegalArgumentException("A plan is drawn on a frame with a scale only."));
    }

    private static Optional<Calibration> spacing(FrameGeometry frame) {
        return frame.pixelSpacing()
                .map(size -> of(Calibration.Source.PIXEL_SPACING, size))
                .or(() -> frame.statedScale().map(size -> of(Calibration.Source.STATED, size)));
    }

    private static Calibration of(Calibration.Source source, PixelSize size) {
        return new Calibration(source, size, Optional.empty(), List.of());
    }

    /** Such as "Scale: ultrasound region 0, 0.0594 mm per pixel". */
    static String words(Calibration calibration) {
        PixelSize size = calibration.pixel();
        String from = switch (calibration.source()) {
            case ULTRASOUND_REGIONS ->
                calibration
                        .region()
                        .map(region -> "ultrasound region " + region.index())
                        .orElse("ultrasound regions");
            case PIXEL_SPACING -> "pixel spacing of the object";
            case STATED -> "stated by a person";
        };
        String across = String.format(Locale.ROOT, "%.4f", size.mmPerColumn());
        String down = String.format(Locale.ROOT, "%.4f", size.mmPerRow());
        String length =
                across.equals(down) ? across + " mm per pixel" : across + " mm per column, " + down + " mm per row";
        return "Scale: " + from + ", " + length + ".";
    }
}
