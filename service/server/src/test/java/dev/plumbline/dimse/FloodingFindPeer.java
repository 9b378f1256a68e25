// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.concurrent.atomic.AtomicInteger;

/** Answers each C-FIND with so many matches of so many bytes, then with success. */
final class FloodingFindPeer extends TalkingPeer {
    private final AtomicInteger sent = new AtomicInteger();
    private final int matches;
    private final int bytes;

    FloodingFindPeer(int matches, int bytes) throws IOException {
        super("FLOODS");
        this.matches = matches;
        this.bytes = bytes;
        begin();
    }

    /** Matches that went out whole. */
    int sent() {
        return sent.get();
    }

    @Override
    void answer(Association association, Message asked) throws IOException {
        asked.data().orElseThrow().transferTo(OutputStream.nullOutputStream());
        Reply pending = Reply.of(Status.PENDING, "");
        for (int i = 0; i < matches; i++) {
            CommandSet match = CommandSet.response(asked.command(), pending);
            association.send(asked.contextId(), match, new ByteArrayInputStream(new byte[bytes]));
            sent.incrementAndGet();
        }
        association.send(asked.contextId(), CommandSet.response(asked.command(), Reply.SUCCESS));
    }
}
