// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

/** The first byte of each PDU. Source: DICOM PS3.8, 9.3.1. */
final class PduType {
    static final int ASSOCIATE_RQ = 1;
    static final int ASSOCIATE_AC = 2;
    static final int ASSOCIATE_RJ = 3;
    static final int DATA = 4;
    static final int RELEASE_RQ = 5;
    static final int RELEASE_RP = 6;
    static final int ABORT = 7;

    /** Type, one reserved byte, length of what follows in four bytes. */
    static final int HEADER_BYTES = 6;

    private PduType() {}
}
