// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.Optional;

/**
 * Messages put together from the presentation data values that arrive on an association. Source: DICOM PS3.8, 9.3.5 and
 * annex E; PS3.7, 6.3.
 */
final class IncomingMessages {
    /** Bits of a message control header. Source: DICOM PS3.8, E.2. */
    static final int COMMAND_FRAGMENT = 1;

    static final int LAST_FRAGMENT = 2;

    private final Association association;
    private final Duration rest;

    private ByteBuffer received = ByteBuffer.allocate(0);
    private Optional<DataStream> arriving = Optional.empty();

    /** @param rest how long is waited for what is left of a message that has begun */
    IncomingMessages(Association association, Duration rest) {
        this.association = association;
        this.rest = rest;
    }

    /** The values of the P-DATA-TF that has just come. */
    void take(ByteBuffer values) {
        received = values;
    }

    /** Whether something is left of the last PDU. */
    boolean hasMore() {
        return received.hasRemaining();
    }

    /**
     * The next message; empty when the peer has released the association.
     *
     * @param wait for its first byte
     */
    Optional<Message> next(Duration wait) throws PeerFailure {
        if (arriving.isPresent()) {
            drop(arriving.get());
        }
        association.requireOpen();
        Optional<Pdv> first = nextPdv(wait);
        if (first.isEmpty()) {
            return Optional.empty();
        }
        CommandSet command = command(first.get());
        int contextId = first.get().contextId();
        arriving = command.announcesDataSet() ? Optional.of(new DataStream(contextId)) : Optional.empty();
        return Optional.of(new Message(contextId, command, arriving.map(stream -> stream)));
    }

    private void drop(DataStream stream) throws PeerFailure {
        byte[] scrap = new byte[PduType.HEADER_BYTES << 10];
        while (stream.read(scrap, 0, scrap.length) >= 0) {
            // what nobody wanted
        }
        arriving = Optional.empty();
    }

    /** A presentation data value: a fragment of a command or of a data set. */
    private record Pdv(int contextId, boolean command, boolean last, ByteBuffer bytes) {}

    /** Empty when the peer has released the association, and that was answered. */
    private Optional<Pdv> nextPdv(Duration wait) throws PeerFailure {
        while (!received.hasRemaining()) {
            Pdu pdu = association.receive(wait);
            if (pdu instanceof Pdu.ReleaseRequest) {
                association.answerRelease();
                return Optional.empty();
            }
        }
        long length = received.remaining() < Integer.BYTES ? -1 : received.getInt() & 0xffffffffL;
        if (length < 2 || length > received.remaining()) {
            throw association.invalid(new InvalidPdu("A presentation data value does not fit its PDU."));
        }
        int contextId = received.get() & 0xff;
        int control = received.get();
        ByteBuffer bytes = received.slice(received.position(), (int) length - 2);
        received.position(received.position() + bytes.capacity());
        if (association.contexts().transferSyntax(contextId).isEmpty()) {
            throw association.invalid(new InvalidPdu("Data came in a presentation context that was not accepted."));
        }
        return Optional.of(
                new Pdv(contextId, (control & COMMAND_FRAGMENT) != 0, (control & LAST_FRAGMENT) != 0, bytes));
    }

    private Pdv nextPdv(int contextId, boolean command) throws PeerFailure {
        Pdv next = nextPdv(rest)
                .orElseThrow(() -> new PeerFailure(
                        PeerFailure.Kind.PROTOCOL, "The peer released the association in the middle of a message."));
        if (next.contextId() != contextId || next.command() != command) {
            throw association.invalid(new InvalidPdu("Fragments of different messages are mixed."));
        }
        return next;
    }

    private CommandSet command(Pdv first) throws PeerFailure {
        if (!first.command()) {
            throw association.invalid(new InvalidPdu("A message does not begin with its command."));
        }
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        append(whole, first);
        for (Pdv fragment = first; !fragment.last(); ) {
            fragment = nextPdv(first.contextId(), true);
            append(whole, fragment);
        }
        try {
            return CommandSet.decode(whole.toByteArray());
        } catch (InvalidPdu e) {
            throw association.invalid(e);
        }
    }

    private void append(ByteArrayOutputStream whole, Pdv fragment) throws PeerFailure {
        byte[] bytes = new byte[fragment.bytes().remaining()];
        fragment.bytes().get(bytes);
        whole.writeBytes(bytes);
        if (whole.size() > CommandSet.LONGEST) {
            throw association.invalid(new InvalidPdu("A command set is longer than " + CommandSet.LONGEST + " bytes."));
        }
    }

    /** The data set of the message that arrives, straight from the connection. */
    private final class DataStream extends InputStream {
        private final int contextId;
        private ByteBuffer fragment = ByteBuffer.allocate(0);
        private boolean last;

        DataStream(int contextId) {
            this.contextId = contextId;
        }

        @Override
        public int read() throws PeerFailure {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] into, int offset, int length) throws PeerFailure {
            if (length == 0) {
                return 0;
            }
            while (!fragment.hasRemaining()) {
                if (last) {
                    return -1;
                }
                association.requireOpen();
                Pdv next = nextPdv(contextId, false);
                fragment = next.bytes();
                last = next.last();
            }
            int count = Math.min(length, fragment.remaining());
            fragment.get(into, offset, count);
            return count;
        }
    }
}
