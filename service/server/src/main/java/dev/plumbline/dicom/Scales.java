// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.UltrasoundRegion;
import java.util.List;
import java.util.Optional;

/** The scale that the numbers of a group were taken with. */
final class Scales {
    private Scales() {}

    /** Empty where nothing was marked, or where nothing tells the scale. */
    static Optional<Calibration> of(FrameGeometry frame, List<PointPx> marks) {
        if (marks.isEmpty()) {
            return Optional.empty();
        }
        if (frame.regions().isEmpty()) {
            return frame.pixelSpacing()
                    .map(pixel ->
                            new Calibration(Calibration.Source.PIXEL_SPACING, pixel, Optional.empty(), List.of()));
        }
        return frame.regions().stream()
                .filter(region -> region.whyUnusable().isEmpty())
                .filter(region -> marks.stream().allMatch(region.bounds()::contains))
                .map(Scales::of)
                .findFirst();
    }

    private static Calibration of(UltrasoundRegion region) {
        return new Calibration(
                Calibration.Source.ULTRASOUND_REGIONS, region.pixelSize(), Optional.of(region.bounds()), List.of());
    }
}
