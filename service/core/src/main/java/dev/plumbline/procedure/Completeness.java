// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.geometry.Foundation;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What a record of a nerve block should hold, as published, and the few things without which it is not signed. */
public record Completeness(List<Item> items) {
    /** All that may ever be required to sign, so that no list of a site makes signing a burden. Design choice. */
    public static final Set<String> MAY_BE_REQUIRED = Set.of(
            "patient",
            "block",
            "side",
            "performer",
            "consent",
            "stopMoment",
            "patientState",
            "needle",
            "agents",
            "aspirationAndSpread",
            "pain",
            "complications");

    public Completeness {
        items = List.copyOf(items);
        Set<String> ids = new HashSet<>();
        for (Item item : items) {
            if (!ids.add(item.id())) {
                throw new IllegalArgumentException("Two items are called " + item.id() + ".");
            }
            if (item.requiredToSign() && !MAY_BE_REQUIRED.contains(item.id())) {
                throw new IllegalArgumentException(item.id() + " cannot be required to sign.");
            }
        }
    }

    /** How far the published panel agreed. */
    public enum Agreement {
        STRONG("strong"),
        WEAK("weak"),
        /** Not in the part of the source that was read. */
        NOT_SEEN("notSeen");

        private final String word;

        Agreement(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** One thing a record should hold. */
    public record Item(String id, String text, boolean requiredToSign, Agreement agreement, Foundation foundation) {}

    /** An item that a record does not hold, and the reason if one was given. */
    public record Missing(Item item, Optional<String> reason) {
        /** It keeps the record from being signed. */
        public boolean blocks() {
            return item.requiredToSign()
                    && reason.filter(text -> !text.isBlank()).isEmpty();
        }
    }

    /** Everything that is missing, in the order of the list. */
    public List<Missing> missing(Set<String> present, Map<String, String> reasons) {
        List<Missing> missing = new ArrayList<>();
        for (Item item : items) {
            if (!present.contains(item.id())) {
                missing.add(new Missing(item, Optional.ofNullable(reasons.get(item.id()))));
            }
        }
        return missing;
    }

    /** Whether the record can be signed as far as this list goes. */
    public boolean signable(Set<String> present, Map<String, String> reasons) {
        return missing(present, reasons).stream().noneMatch(Missing::blocks);
    }
}
