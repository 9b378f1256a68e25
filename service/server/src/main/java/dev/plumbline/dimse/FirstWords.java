// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.nio.ByteBuffer;
import java.util.Arrays;

/**
 * What a connection has said before anybody listens to it: its first message, a PDU of the upper layer or a record of TLS
 * (RFC 8446, 5.1). The headers of both state how long they are.
 */
final class FirstWords {
    private static final int TLS_HANDSHAKE = 22;
    private static final int TLS_HEADER_BYTES = 5;

    private byte[] said = new byte[0];

    void take(ByteBuffer bytes) {
        int had = said.length;
        int more = bytes.remaining();
        said = Arrays.copyOf(said, had + more);
        bytes.get(said, had, more);
    }

    byte[] bytes() {
        return said;
    }

    /**
     * Whether a whole first message is there, or one that is not worth waiting for: longer than any association request, or
     * of no known type. Whoever reads it never has to wait for its rest.
     */
    boolean areWhole() {
        if (said.length >= Connection.LONGEST_ASSOCIATE + PduType.HEADER_BYTES) {
            return true;
        }
        if (said.length > 0 && said[0] == TLS_HANDSHAKE) {
            return said.length >= TLS_HEADER_BYTES
                    && said.length >= TLS_HEADER_BYTES + ((said[3] & 0xff) << Byte.SIZE | (said[4] & 0xff));
        }
        if (said.length < PduType.HEADER_BYTES) {
            return false;
        }
        long length = ByteBuffer.wrap(said).getInt(2) & 0xffffffffL;
        return said[0] < PduType.ASSOCIATE_RQ
                || said[0] > PduType.ABORT
                || length > Connection.LONGEST_ASSOCIATE
                || said.length >= PduType.HEADER_BYTES + length;
    }
}
