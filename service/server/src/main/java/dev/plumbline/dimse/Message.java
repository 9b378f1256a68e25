// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;

/**
 * A message that arrived: its command, and the data set while it still comes in. Source: DICOM PS3.7, 6.3.
 *
 * @param data to be read before the next message is asked for; what nobody reads is dropped
 */
record Message(int contextId, CommandSet command, Optional<InputStream> data) {
    /** Longest identifier or report that is read at once. Source: design choice. */
    private static final int LONGEST_DATA_SET = 1 << 20;

    int commandField() {
        return command.number(CommandElement.COMMAND_FIELD).orElse(0);
    }

    int status() {
        return command.number(CommandElement.STATUS).orElse(Status.PROCESSING_FAILURE.code());
    }

    Reply reply() {
        return new Reply(status(), command.text(CommandElement.ERROR_COMMENT).orElse(""));
    }

    /** The whole data set, for those that are small by nature; no bytes where there is none. */
    byte[] smallDataSet() throws IOException {
        if (data.isEmpty()) {
            return new byte[0];
        }
        byte[] bytes = data.get().readNBytes(LONGEST_DATA_SET + 1);
        if (bytes.length > LONGEST_DATA_SET) {
            throw new PeerFailure(
                    PeerFailure.Kind.PROTOCOL, "The peer sent a data set of more than " + LONGEST_DATA_SET + " bytes.");
        }
        return bytes;
    }
}
