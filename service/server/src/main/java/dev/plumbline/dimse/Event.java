// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.util.Arrays;

/** What can happen to an association. Source: DICOM PS3.8, table 9-10, left column; the numbers are the standard's. */
enum Event {
    ASSOCIATE_REQUEST(1),
    TRANSPORT_CONNECTED(2),
    ASSOCIATE_AC_PDU(3),
    ASSOCIATE_RJ_PDU(4),
    TRANSPORT_INDICATION(5),
    ASSOCIATE_RQ_PDU(6),
    ASSOCIATE_ACCEPT(7),
    ASSOCIATE_REJECT(8),
    DATA_REQUEST(9),
    DATA_PDU(10),
    RELEASE_REQUEST(11),
    RELEASE_RQ_PDU(12),
    RELEASE_RP_PDU(13),
    RELEASE_RESPONSE(14),
    ABORT_REQUEST(15),
    ABORT_PDU(16),
    TRANSPORT_CLOSED(17),
    ARTIM_EXPIRED(18),
    INVALID_PDU(19);

    private final int number;

    Event(int number) {
        this.number = number;
    }

    /** As in the standard. */
    static Event of(int number) {
        return Arrays.stream(values())
                .filter(event -> event.number == number)
                .findFirst()
                .orElseThrow();
    }
}
