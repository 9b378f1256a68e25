// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * One entry of the sample set.
 *
 * @param name of its files: lower case words joined by hyphens
 * @param shows one line for a reader
 */
public record Sample(String name, Chapter chapter, String shows, SampleScene scene) {
    /** Part of the set, in the order of the set. */
    public enum Chapter {
        IN_PLANE("In-plane: plan and needle"),
        OUT_OF_PLANE("Out-of-plane: plan and dot"),
        SHAFT_IN_PART("What is seen of the shaft"),
        OTHER_BODIES("Other bodies, probes and needles"),
        SCALES("Scales and encodings"),
        CINES("Cines");

        private final String title;

        Chapter(String title) {
            this.title = title;
        }

        public String title() {
            return title;
        }
    }
}
