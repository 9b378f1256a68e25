// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import java.util.Arrays;
import java.util.List;

/** The kinds of an event of the log, with the fields that each needs and those that it takes; the schema says the same. */
enum EventKind {
    STOP_MOMENT("stopMoment", "names block side markSeen consentSeen", "punctureSite"),
    PUNCTURE("puncture", "", "punctureSite"),
    REDIRECTION("redirection", "", ""),
    PASS("pass", "", ""),
    SIGHT_STEP("sightStep", "state", "step"),
    DOPPLER("doppler", "", "finding"),
    ASPIRATION("aspiration", "blood", ""),
    ALIQUOT("aliquot", "volumeMl", "fluid agent hydrolocation spread resistance pain"),
    STOP("stop", "", "sign reason"),
    PLAN_CHANGED("planChanged", "reason", ""),
    CONTEXT_CHANGED("contextChanged", "what", ""),
    NEEDLE_OUT("needleOut", "", ""),
    COMPLICATION("complication", "complication", "text"),
    COMPLICATIONS_LOOKED_FOR("complicationsLookedFor", "", "by"),
    NEAR_MISS("nearMiss", "text", ""),
    HAND_OVER("handOver", "to", ""),
    CORRECTION("correction", "corrects", "reason");

    /** Fields that every event has or may have. */
    static final List<String> COMMON =
            List.of("id", "kind", "happenedAt", "enteredAt", "enteredBy", "enteredLater", "corrects");

    private final String word;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> needs;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> takes;

    EventKind(String word, String needs, String takes) {
        this.word = word;
        this.needs = names(needs);
        this.takes = names(takes);
    }

    private static List<String> names(String text) {
        return Arrays.stream(text.split(" ")).filter(name -> !name.isEmpty()).toList();
    }

    String word() {
        return word;
    }

    List<String> needs() {
        return needs;
    }

    boolean knows(String field) {
        return COMMON.contains(field) || needs.contains(field) || takes.contains(field);
    }
}
