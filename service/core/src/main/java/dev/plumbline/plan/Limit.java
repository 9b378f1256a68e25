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

    /** Why it forbids a path, as a clause; names as they were given. */
    public String words() {
        return switch (kind) {
            case FOOTPRINT -> "the probe stands where the needle would enter";
            case REACH -> "the needle does not reach with its reserve";
            case LEAD_IN -> "too much needle would be inside before the beam can show it";
            case NERVE -> "the path crosses " + subject();
            case HAZARD -> "the path comes too near to " + subject();
            case HOUSING -> "the probe's housing stands in the way";
            case PUNCTURE_DISTANCE -> "the puncture is farther from the beam than you allow";
        };
    }

    /** What it is about: "the probe's footprint", "the hazard "artery"". */
    public String subject() {
        return switch (kind) {
            case FOOTPRINT -> "the probe's footprint";
            case REACH -> "the needle's reach";
            case LEAD_IN -> "the lead-in";
            case NERVE -> structure.map(name -> "the nerve " + quoted(name)).orElse("a nerve");
            case HAZARD -> structure.map(name -> "the hazard " + quoted(name)).orElse("a hazard");
            case HOUSING -> "the probe's housing";
            case PUNCTURE_DISTANCE -> "the largest puncture distance";
        };
    }

    private static String quoted(String name) {
        return "\"" + name + "\"";
    }
}
