// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.List;
import java.util.Optional;

/**
 * The scale that one measurement on one frame uses, and where it comes from.
 *
 * @param region the region it was read from; empty for the other sources
 * @param knownDistance what it was computed from; empty for the other sources
 * @param doubts what a person should look at before trusting it, in words
 */
public record Calibration(
        Source source,
        PixelSize pixel,
        Optional<Region> region,
        Optional<KnownDistance> knownDistance,
        List<String> doubts) {
    /** Where a scale comes from, with its name in JSON. */
    public enum Source {
        ULTRASOUND_REGIONS("ultrasoundRegions"),
        PIXEL_SPACING("pixelSpacing"),
        STATED("stated");

        private final String word;

        Source(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public Calibration {
        doubts = List.copyOf(doubts);
    }
}
