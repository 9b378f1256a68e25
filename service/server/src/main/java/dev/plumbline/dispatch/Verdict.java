// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

/** What an archive's answer means for an object on its way. */
enum Verdict {
    /** The archive says it has it. */
    SENT("sent"),
    /** The archive says it has it and that something was altered; proof will tell. */
    SENT_ALTERED("sent; the archive altered it, which the proof judges"),
    /** The archive says it was there before; proof will tell whether it is the same. */
    SENT_BEFORE("sent; there before, which the proof judges"),
    /** The archive cannot just now, as it seems whatever the object: the record and its destination rest. */
    DESTINATION_LATER("queued; record and destination rest"),
    /** The archive failed with this object; others go on. */
    RECORD_LATER("queued; the record rests"),
    /** Refused for good, until a person acts. */
    HELD("held");

    private final String words;

    Verdict(String words) {
        this.words = words;
    }

    /** As the conformance statement says it. */
    String words() {
        return words;
    }

    boolean isSent() {
        return this == SENT || this == SENT_ALTERED || this == SENT_BEFORE;
    }
}
