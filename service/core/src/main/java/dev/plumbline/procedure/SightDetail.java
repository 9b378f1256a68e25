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

    /**
     * The log as it goes into the record, corrections and what they correct included. Only notes of the view are ever held
     * back; where a correction speaks of one, what stands after all corrections is all that can be told without it.
     */
    public List<LoggedEvent> kept(ProcedureLog log) {
        if (this == FULL) {
            return log.events();
        }
        return log.events().stream().anyMatch(event -> speaksOfView(event, log))
                ? recorded(log)
                : log.events().stream()
                        .filter(event -> !(event.what() instanceof Happening.Sight))
                        .toList();
    }

    private static boolean speaksOfView(LoggedEvent event, ProcedureLog log) {
        return event.what() instanceof Happening.Correction correction
                && (correction
                                .instead()
                                .filter(Happening.Sight.class::isInstance)
                                .isPresent()
                        || log.event(correction.corrects())
                                .filter(corrected -> corrected.what() instanceof Happening.Sight)
                                .isPresent());
    }

    /** What stands of a log and may go into the record; only notes of the view are ever held back. */
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
