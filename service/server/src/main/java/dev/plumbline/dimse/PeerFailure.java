// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.IOException;

/** A peer did not do what was asked of it; the kind says what can be done about that, the message says it in words. */
public final class PeerFailure extends IOException {
    private static final long serialVersionUID = 1L;

    private final Kind kind;

    /** How the exchange failed. */
    public enum Kind {
        /** The name is not known or nothing listens there. */
        UNREACHABLE,
        /** The peer did not answer in time. */
        TIMEOUT,
        /** The TLS handshake failed: certificates, names or versions do not fit. */
        TLS,
        /** The association was rejected for now. */
        REJECTED_TRANSIENT,
        /** The association was rejected for good, such as for an AE title. */
        REJECTED,
        /** The presentation context that is needed was not accepted. */
        CONTEXT_REFUSED,
        /** The peer aborted the association or closed the connection. */
        ABORTED,
        /** The peer broke the protocol, such as by answering another message. */
        PROTOCOL
    }

    public PeerFailure(Kind kind, String message) {
        super(message);
        this.kind = kind;
    }

    PeerFailure(Kind kind, String message, Throwable cause) {
        super(message, cause);
        this.kind = kind;
    }

    public Kind kind() {
        return kind;
    }
}
