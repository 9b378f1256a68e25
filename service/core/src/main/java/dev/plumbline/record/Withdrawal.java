// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import java.time.OffsetDateTime;

/**
 * The statement that a record, with every earlier revision of it, is no longer to be used. What was written stays as it is;
 * a rejection note names it.
 *
 * @param revision number of the withdrawal itself among the revisions of the case
 * @param text in the words of who withdraws
 * @param by who withdraws, a DICOM person name
 * @param time of the withdrawal, the only clock of its note
 */
public record Withdrawal(String caseId, int revision, Ground ground, String text, String by, OffsetDateTime time) {
    /** Why. Source: DICOM PS3.16 CID 7010 and CID 7011, one title or modifier for each. */
    public enum Ground {
        WRONG_PATIENT_OR_SIDE("wrongPatientOrSide"),
        WRONG_WORKLIST_ENTRY("wrongWorklistEntry"),
        INAPPROPRIATE_PROCESSING("inappropriateProcessing"),
        OTHER("other");

        private final String word;

        Ground(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
