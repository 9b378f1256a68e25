// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import java.util.Optional;

/** A limit by name, with the structure it belongs to where there is one. */
public record Limit(Kind kind, Optional<String> structure) {
    /** What forbids a path, or was not judged. */
    public enum Kind {
        FOOTPRINT("footprint"),
        REACH("reach"),
        LEAD_IN("leadIn"),
        NERVE("nerve"),
        HAZARD("hazard"),
        HOUSING("housing"),
        /** Out-of-plane: the puncture is farther from the beam than was allowed. */
        PUNCTURE_DISTANCE("punctureDistance");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public static Limit of(Kind kind) {
        return new Limit(kind, Optional.empty());
    }

    /** As in answers: {@code footprint}, {@code hazard:artery}. */
    public String word() {
        return structure.map(name -> kind.word() + ":" + name).orElse(kind.word());
    }
}
