// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

/**
 * A protocol data unit of the upper layer but P-DATA-TF, whose bytes are never held as a value. Source: DICOM PS3.8, 9.3.
 */
sealed interface Pdu {
    /** 9.3.2. */
    record AssociateRequest(Proposal proposal) implements Pdu {}

    /** 9.3.2 as well, of a protocol version other than ours, so that the rest cannot be read. */
    record ForeignAssociateRequest() implements Pdu {}

    /** 9.3.3. */
    record AssociateAccept(Agreement agreement) implements Pdu {}

    /** 9.3.4. */
    record AssociateReject(Rejection rejection) implements Pdu {}

    /** 9.3.5; so many bytes of presentation data values follow on the connection. */
    record Data(int length) implements Pdu {}

    /** 9.3.6. */
    record ReleaseRequest() implements Pdu {}

    /** 9.3.7. */
    record ReleaseReply() implements Pdu {}

    /**
     * 9.3.8.
     *
     * @param source 0 the service user, 2 the service provider
     * @param reason meaningful where the provider aborts
     */
    record Abort(int source, int reason) implements Pdu {
        static final int BY_USER = 0;
        static final int BY_PROVIDER = 2;
        static final int UNRECOGNISED_PDU = 1;
        static final int UNEXPECTED_PDU = 2;
        static final int INVALID_PARAMETER = 6;
    }
}
