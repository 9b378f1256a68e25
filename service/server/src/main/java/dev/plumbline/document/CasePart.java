// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import java.util.Arrays;
import java.util.Optional;

/** What can be appended to a case that is held: items of a list, or a part that stands once and is set anew. */
public enum CasePart {
    OBSERVATIONS("observations", true),
    EVENTS("events", true),
    AGENTS("agents", true),
    CHECKS("checks", true),
    TEAM("team", true),
    APPROACH("approach", false),
    /** The same picture only, with the scale that a person states for it. */
    FRAME("frame", false),
    MARKS("marks", false),
    INTENT("intent", false),
    PROBE("probe", false),
    NEEDLE("needle", false),
    CONSTRAINTS("constraints", false),
    CONTEXT("context", false);

    private final String field;
    private final boolean list;

    CasePart(String field, boolean list) {
        this.field = field;
        this.list = list;
    }

    /** Field of the case document. */
    public String field() {
        return field;
    }

    public boolean list() {
        return list;
    }

    public static Optional<CasePart> of(String field) {
        return Arrays.stream(values()).filter(part -> part.field.equals(field)).findFirst();
    }
}
