// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Shape;
import java.util.OptionalDouble;

/**
 * An outline or disc not to be crossed.
 *
 * @param marginMm distance to keep; 0 where absent: the outline is not crossed
 */
public record Hazard(String name, Kind kind, OptionalDouble marginMm, Shape shape) {
    /** What the structure is. */
    public enum Kind {
        ARTERY("artery"),
        VEIN("vein"),
        PLEURA("pleura"),
        BOWEL("bowel"),
        DURA("dura"),
        KIDNEY("kidney"),
        BONE("bone"),
        OTHER("other");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
