// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.concurrent.atomic.AtomicInteger;

/** An archive that takes everything, and answers a C-GET with an object of its own choice under a UID of its own choice. */
public final class HostileGetArchive extends TalkingPeer {
    private final Given given;
    private final AtomicInteger handedBack = new AtomicInteger();

    /**
     * What it hands back.
     *
     * @param uid in the command
     * @param dataSet Explicit VR Little Endian, without file meta information
     */
    @SuppressWarnings("ArrayRecordComponent") // handed over once, never compared
    public record Given(String sopClassUid, String uid, byte[] dataSet) {}

    public HostileGetArchive(Given given) throws IOException {
        super("HOSTILE");
        this.given = given;
        begin();
    }

    /** How often it handed its object back, and was answered. */
    public int handedBack() {
        return handedBack.get();
    }

    @Override
    void answer(Association association, Message message) throws IOException {
        message.data().orElseThrow().transferTo(OutputStream.nullOutputStream());
        if (message.commandField() == CommandField.C_GET_RQ) {
            handBack(association);
        }
        association.send(message.contextId(), CommandSet.response(message.command(), Reply.SUCCESS));
    }

    private void handBack(Association association) throws IOException {
        int context = association.proposal().contexts().stream()
                .filter(each -> each.abstractSyntax().equals(given.sopClassUid()))
                .findFirst()
                .orElseThrow()
                .id();
        CommandSet request = CommandSet.request(CommandField.C_STORE_RQ, 77, given.sopClassUid())
                .putUid(CommandElement.AFFECTED_SOP_INSTANCE_UID, given.uid())
                .put(CommandElement.PRIORITY, 0);
        association.send(context, request, new ByteArrayInputStream(given.dataSet()));
        association.nextMessage(Timeouts.USUAL.response()).orElseThrow();
        handedBack.incrementAndGet();
    }
}
