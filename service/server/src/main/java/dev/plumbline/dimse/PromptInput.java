// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.FilterInputStream;
import java.io.IOException;
import java.net.Socket;
import jdk.net.ExtendedSocketOptions;

/**
 * What comes from a peer, acknowledged as soon as it is read. Many systems write a PDU in two pieces and hold the second
 * back until the first is acknowledged (RFC 896), which this system would delay by some 40 ms (RFC 1122, 4.2.3.2): each
 * answer to each object would cost that. The wish does not last, so that it is renewed with each read.
 */
final class PromptInput extends FilterInputStream {
    private final Socket socket;
    private final boolean canBePrompt;

    PromptInput(Socket socket) throws IOException {
        super(socket.getInputStream());
        this.socket = socket;
        this.canBePrompt = socket.supportedOptions().contains(ExtendedSocketOptions.TCP_QUICKACK);
    }

    @Override
    public int read(byte[] into, int offset, int count) throws IOException {
        if (canBePrompt) {
            socket.setOption(ExtendedSocketOptions.TCP_QUICKACK, true);
        }
        return super.read(into, offset, count);
    }
}
