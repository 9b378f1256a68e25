// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.dimse.PeerFailure;
import dev.plumbline.dimse.Status;

/**
 * The tables from answers to verdicts. Source of the statuses: C-STORE DICOM PS3.4 B.2.3 and PS3.7 9.1.1.1.9, HTTP RFC
 * 9110 15 and PS3.18 10.5.3; of the verdicts: design choice, held only where trying again cannot help.
 */
final class Verdicts {
    private static final int OK = 200;
    private static final int ACCEPTED = 202;
    private static final int REQUEST_TIMEOUT = 408;
    private static final int CONFLICT = 409;
    private static final int TOO_EARLY = 425;
    private static final int TOO_MANY_REQUESTS = 429;
    private static final int SERVER_ERROR = 500;

    private Verdicts() {}

    /** Of the status of a C-STORE answer, PS3.4 table B.2-1 and PS3.7 annex C. */
    static Verdict of(Status status) {
        return switch (status) {
            case SUCCESS -> Verdict.SENT;
            case COERCION, ELEMENTS_DISCARDED, DATA_SET_DOES_NOT_MATCH_WARNING, OTHER_WARNING -> Verdict.SENT_ALTERED;
            case DUPLICATE_INSTANCE -> Verdict.SENT_BEFORE;
            case OUT_OF_RESOURCES, RESOURCE_LIMITATION -> Verdict.DESTINATION_LATER;
            case PROCESSING_FAILURE, DUPLICATE_INVOCATION, CANCELLED, PENDING -> Verdict.RECORD_LATER;
            case DATA_SET_DOES_NOT_MATCH,
                    OTHER_REFUSAL,
                    CANNOT_UNDERSTAND,
                    NO_SUCH_INSTANCE,
                    NO_SUCH_EVENT_TYPE,
                    NO_SUCH_ARGUMENT,
                    INVALID_ARGUMENT,
                    INVALID_INSTANCE,
                    NO_SUCH_CLASS,
                    CLASS_INSTANCE_CONFLICT,
                    CLASS_NOT_SUPPORTED,
                    NO_SUCH_ACTION,
                    NOT_AUTHORISED,
                    UNRECOGNISED_OPERATION,
                    MISTYPED_ARGUMENT,
                    OTHER_FAILURE -> Verdict.HELD;
        };
    }

    /** Of an association that failed. */
    static Verdict of(PeerFailure.Kind kind) {
        return switch (kind) {
            case UNREACHABLE, TIMEOUT, TLS, REJECTED_TRANSIENT, REJECTED, ABORTED, PROTOCOL ->
                Verdict.DESTINATION_LATER;
            case CONTEXT_REFUSED -> Verdict.HELD;
        };
    }

    /** Of the status of a STOW-RS answer without a usable body; 409 is judged by its failure reasons where it has any. */
    static Verdict ofHttp(int status) {
        if (status == OK) {
            return Verdict.SENT;
        }
        if (status == ACCEPTED || status == CONFLICT) {
            return Verdict.SENT_BEFORE;
        }
        boolean later = status == REQUEST_TIMEOUT || status == TOO_EARLY || status == TOO_MANY_REQUESTS;
        return later || status >= SERVER_ERROR ? Verdict.DESTINATION_LATER : Verdict.HELD;
    }
}
