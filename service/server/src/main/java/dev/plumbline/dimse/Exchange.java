// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.IOException;
import java.time.Duration;

/** One request and its answers on an association: an answer to anything else ends the association. */
final class Exchange {
    private final Association association;
    private final CommandSet request;

    Exchange(Association association, CommandSet request) {
        this.association = association;
        this.request = request;
    }

    /**
     * The next answer.
     *
     * @throws PeerFailure where the peer answers another message, releases, aborts, or does not answer in time
     */
    Message answer(Duration wait) throws PeerFailure {
        return answer(association
                .nextMessage(wait)
                .orElseThrow(() -> new PeerFailure(
                        PeerFailure.Kind.ABORTED, "The peer released the association instead of answering.")));
    }

    /** The message itself where it answers this request. */
    Message answer(Message message) throws PeerFailure {
        int expected = request.number(CommandElement.COMMAND_FIELD).orElse(0) | CommandField.RESPONSE;
        if (message.commandField() != expected) {
            throw broken("The peer answered with another kind of message.");
        }
        int asked = request.number(CommandElement.MESSAGE_ID).orElse(0);
        if (message.command()
                        .number(CommandElement.MESSAGE_ID_BEING_RESPONDED_TO)
                        .orElse(-1)
                != asked) {
            throw broken("The peer answered another message than the one it was sent.");
        }
        if (message.command().number(CommandElement.STATUS).isEmpty()) {
            throw broken("The peer answered without a status.");
        }
        return message;
    }

    private PeerFailure broken(String words) {
        association.abort();
        return new PeerFailure(PeerFailure.Kind.PROTOCOL, words);
    }

    /** The only answer, of which just the status counts. */
    Reply reply(Duration wait) throws IOException {
        Reply reply = answer(wait).reply();
        return reply;
    }
}
