// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import java.util.List;

/** How much of the search for the needle goes into the permanent record; the site's {@code record.sightDetail}. */
public enum SightDetail {
    /** Every view and step. */
    FULL("full"),
    /** Only whether the tip was seen when something was injected. */
    SUMMARY("summary"),
    NONE("none");

    private final String word;

    SightDetail(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    /** What of a log may go into the record; only notes of the view are ever held back. */
    public List<LoggedEvent> recorded(ProcedureLog log) {
        return this == FULL
                ? log.standing()
                : log.standing().stream()
                        .filter(event -> !(event.what() instanceof Happening.Sight))
                        .toList();
    }

    /** Whether the tip's being seen at injection goes into the record. */
    public boolean recordsTipAtInjection() {
        return this != NONE;
    }
}
