// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.Calibration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the scale of one frame is, where it comes from and why, for a person to check before anything is measured.
 *
 * @param frameNumber from 1
 * @param calibration empty where the frame gives no usable scale
 * @param widthMm width of the region that is used, or of the whole frame where there are no regions
 * @param depthMm its height
 * @param doubts what a person should look at before trusting the scale
 * @param text all of it in words, one statement a line
 */
public record FrameExplanation(
        int frameCount,
        int frameNumber,
        Optional<Calibration> calibration,
        OptionalDouble widthMm,
        OptionalDouble depthMm,
        List<RegionNote> regions,
        ProbeEstimate probe,
        List<String> doubts,
        String text) {
    /**
     * One region of the frame.
     *
     * @param number counted from 1, as people count
     * @param used whether a frame without marks is measured in it
     * @param note why it is used or not
     */
    public record RegionNote(int number, boolean used, String note) {}

    public FrameExplanation {
        regions = List.copyOf(regions);
        doubts = List.copyOf(doubts);
    }
}
