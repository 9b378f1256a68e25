// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import jdk.net.ExtendedSocketOptions;
import org.junit.jupiter.api.Test;

class PromptInputTest {
    @Test
    void wishesForPromptAcknowledgementWithEachRead() throws IOException {
        try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
                Socket peer = new Socket(server.getInetAddress(), server.getLocalPort());
                Socket socket = server.accept()) {
            PromptInput in = new PromptInput(socket);
            for (byte sent = 1; sent <= 3; sent++) {
                socket.setOption(ExtendedSocketOptions.TCP_QUICKACK, false);
                peer.getOutputStream().write(sent);
                byte[] read = new byte[1];
                assertThat(in.read(read, 0, 1)).isEqualTo(1);
                assertThat(read[0]).isEqualTo(sent);
                assertThat(socket.getOption(ExtendedSocketOptions.TCP_QUICKACK)).isTrue();
            }
        }
    }
}
