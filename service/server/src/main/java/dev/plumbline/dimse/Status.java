// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.util.Arrays;
import java.util.List;

/**
 * Statuses of DIMSE answers, each with the standard's words; a row may stand for a range. Source: DICOM PS3.4, table B.2-1
 * (C-STORE), C.4-3 (C-GET), C.4-1 (C-FIND); PS3.7, annex C.
 */
public enum Status {
    SUCCESS(0x0000, 0xffff, Kind.SUCCESS, "success"),
    PENDING(0xff00, 0xfffe, Kind.PENDING, "more follows"),
    CANCELLED(0xfe00, 0xffff, Kind.FAILURE, "cancelled"),
    COERCION(0xb000, 0xffff, Kind.WARNING, "coercion of data elements"),
    ELEMENTS_DISCARDED(0xb006, 0xffff, Kind.WARNING, "elements discarded"),
    DATA_SET_DOES_NOT_MATCH_WARNING(0xb007, 0xffff, Kind.WARNING, "data set does not match SOP class"),
    OTHER_WARNING(0xb000, 0xf000, Kind.WARNING, "warning"),
    OUT_OF_RESOURCES(0xa700, 0xff00, Kind.FAILURE, "refused: out of resources"),
    DATA_SET_DOES_NOT_MATCH(0xa900, 0xff00, Kind.FAILURE, "data set does not match SOP class"),
    OTHER_REFUSAL(0xa000, 0xf000, Kind.FAILURE, "refused"),
    CANNOT_UNDERSTAND(0xc000, 0xf000, Kind.FAILURE, "cannot understand"),
    PROCESSING_FAILURE(0x0110, 0xffff, Kind.FAILURE, "processing failure"),
    DUPLICATE_INSTANCE(0x0111, 0xffff, Kind.FAILURE, "duplicate SOP instance"),
    NO_SUCH_INSTANCE(0x0112, 0xffff, Kind.FAILURE, "no such object instance"),
    NO_SUCH_EVENT_TYPE(0x0113, 0xffff, Kind.FAILURE, "no such event type"),
    NO_SUCH_ARGUMENT(0x0114, 0xffff, Kind.FAILURE, "no such argument"),
    INVALID_ARGUMENT(0x0115, 0xffff, Kind.FAILURE, "invalid argument value"),
    INVALID_INSTANCE(0x0117, 0xffff, Kind.FAILURE, "invalid object instance"),
    NO_SUCH_CLASS(0x0118, 0xffff, Kind.FAILURE, "no such SOP class"),
    CLASS_INSTANCE_CONFLICT(0x0119, 0xffff, Kind.FAILURE, "class-instance conflict"),
    CLASS_NOT_SUPPORTED(0x0122, 0xffff, Kind.FAILURE, "SOP class not supported"),
    NO_SUCH_ACTION(0x0123, 0xffff, Kind.FAILURE, "no such action"),
    NOT_AUTHORISED(0x0124, 0xffff, Kind.FAILURE, "not authorised"),
    DUPLICATE_INVOCATION(0x0210, 0xffff, Kind.FAILURE, "duplicate invocation"),
    UNRECOGNISED_OPERATION(0x0211, 0xffff, Kind.FAILURE, "unrecognised operation"),
    MISTYPED_ARGUMENT(0x0212, 0xffff, Kind.FAILURE, "mistyped argument"),
    RESOURCE_LIMITATION(0x0213, 0xffff, Kind.FAILURE, "resource limitation"),
    OTHER_FAILURE(0x0000, 0x0000, Kind.FAILURE, "a status the standard does not name");

    private static final List<Status> ALL = Arrays.asList(values());

    private final int code;
    private final int mask;
    private final Kind kind;
    private final String words;

    /** Source: DICOM PS3.7, C.1. */
    public enum Kind {
        SUCCESS,
        PENDING,
        WARNING,
        FAILURE
    }

    Status(int code, int mask, Kind kind, String words) {
        this.code = code;
        this.mask = mask;
        this.kind = kind;
        this.words = words;
    }

    /** The first row, from the narrowest to the widest, that a status falls under. */
    public static Status of(int status) {
        return ALL.stream()
                .filter(row -> (status & row.mask) == row.code)
                .findFirst()
                .orElse(OTHER_FAILURE);
    }

    /** The status itself, or the lowest of its range. */
    public int code() {
        return code;
    }

    public Kind kind() {
        return kind;
    }

    /** The standard's words. */
    public String words() {
        return words;
    }

    /** As tables write it: {@code 0110}, or {@code A7xx} for a range. */
    public String pattern() {
        String digits = String.format("%04X", code);
        return switch (mask) {
            case 0xff00 -> digits.substring(0, 2) + "xx";
            case 0xf000 -> digits.substring(0, 1) + "xxx";
            case 0xfffe -> "FF00, FF01";
            case 0 -> "other";
            default -> digits;
        };
    }
}
