// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** How a content item stands to its parent, DICOM PS3.3 C.17.3.2.4. */
enum Relation {
    /** Only the root stands to nothing. */
    NONE(""),
    CONTAINS("CONTAINS"),
    HAS_CONCEPT_MOD("HAS CONCEPT MOD"),
    HAS_OBS_CONTEXT("HAS OBS CONTEXT"),
    HAS_ACQ_CONTEXT("HAS ACQ CONTEXT"),
    HAS_PROPERTIES("HAS PROPERTIES"),
    INFERRED_FROM("INFERRED FROM"),
    SELECTED_FROM("SELECTED FROM");

    private static final Map<String, Relation> BY_TEXT =
            Arrays.stream(values()).collect(Collectors.toUnmodifiableMap(Relation::text, r -> r));

    private final String text;

    Relation(String text) {
        this.text = text;
    }

    String text() {
        return text;
    }

    static Optional<Relation> of(String text) {
        return Optional.ofNullable(BY_TEXT.get(text));
    }
}
