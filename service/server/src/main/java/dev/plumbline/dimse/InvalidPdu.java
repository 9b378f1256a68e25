// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.IOException;

/** Event 19: what arrived is no PDU, or one that breaks PS3.8, 9.3. */
final class InvalidPdu extends IOException {
    private static final long serialVersionUID = 1L;

    private final int reason;

    InvalidPdu(int reason, String message) {
        super(message);
        this.reason = reason;
    }

    InvalidPdu(String message) {
        this(Pdu.Abort.INVALID_PARAMETER, message);
    }

    /** For A-ABORT by the provider, PS3.8 table 9-26. */
    int reason() {
        return reason;
    }
}
