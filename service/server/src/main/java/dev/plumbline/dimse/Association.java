// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dimse.Agreement.Answer;
import dev.plumbline.dimse.Agreement.Result;
import dev.plumbline.dimse.StateTable.Transition;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.net.SocketTimeoutException;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * One association over one connection, driven by {@link StateTable}: every event asks the table, and the action it names
 * is done. Used by one thread at a time. After a failure the association is over and the connection closed.
 */
public final class Association implements AutoCloseable {
    /** Longest P-DATA-TF we take, which peers are told. Source: design choice, TRUST 2.2. */
    static final int LONGEST_DATA_PDU = 131_072;

    private static final int LONGEST_SENT = 131_072;
    private static final int SHORTEST_SENT = 64;
    private static final int PDV_HEADER_BYTES = 6;
    private static final int COMMAND_FRAGMENT = 1;
    private static final int LAST_FRAGMENT = 2;

    private final Connection connection;
    private final Timeouts timeouts;
    private final boolean requestor;
    private State state;
    private Proposal proposal;
    private Agreement agreement;
    private int longestSent = LONGEST_SENT;
    private int messages;

    private ByteBuffer received = ByteBuffer.allocate(0);
    private Optional<DataStream> arriving = Optional.empty();

    private Association(Connection connection, Timeouts timeouts, boolean requestor) {
        this.connection = connection;
        this.timeouts = timeouts;
        this.requestor = requestor;
        this.state = requestor ? State.STA4 : State.STA2;
        Proposal.AeTitles nobody = new Proposal.AeTitles("", "");
        this.proposal = new Proposal(nobody, "", List.of(), 0, List.of());
        this.agreement = new Agreement(nobody, List.of(), 0, List.of());
    }

    /** Source: DICOM PS3.8, 9.1.1, the requestor's side: from the open connection (Sta4) to the agreement (Sta6). */
    static Association request(Connection connection, Timeouts timeouts, Proposal proposal) throws PeerFailure {
        Association association = new Association(connection, timeouts, true);
        association.proposal = proposal;
        association.on(Event.TRANSPORT_CONNECTED);
        association.send(AssociateWriter.request(proposal));
        association.receive(timeouts.connect());
        return association;
    }

    /** How an acceptor judges a request. */
    interface Judgement {
        /** The answer to a request that is accepted. */
        Agreement judge(Proposal proposal) throws Rejected;
    }

    /** The acceptor's answer to a request it does not accept. */
    static final class Rejected extends Exception {
        private static final long serialVersionUID = 1L;

        private final Rejection why;

        Rejected(Rejection why) {
            super(why.words());
            this.why = why;
        }

        Rejection why() {
            return why;
        }
    }

    /**
     * Source: DICOM PS3.8, 9.1.1, the acceptor's side: from the open connection (Sta2) to the agreement (Sta6).
     *
     * @return empty where the request was rejected, and that was answered
     */
    static Optional<Association> accept(Connection connection, Timeouts timeouts, Judgement judgement)
            throws PeerFailure {
        Association association = new Association(connection, timeouts, false);
        Pdu pdu = association.receive(timeouts.artim());
        try {
            if (!(pdu instanceof Pdu.AssociateRequest request)) {
                throw new Rejected(Rejection.PROTOCOL_VERSION_NOT_SUPPORTED);
            }
            association.proposal = request.proposal();
            association.agreement = judgement.judge(request.proposal());
        } catch (Rejected rejected) {
            association.on(Event.ASSOCIATE_REJECT);
            association.send(AssociateWriter.reject(rejected.why()));
            association.end();
            return Optional.empty();
        }
        association.on(Event.ASSOCIATE_ACCEPT);
        association.limitSent(request(pdu).maxPduBytes());
        association.send(AssociateWriter.accept(association.agreement));
        return Optional.of(association);
    }

    private static Proposal request(Pdu pdu) {
        return ((Pdu.AssociateRequest) pdu).proposal();
    }

    private void limitSent(int peersLimit) {
        longestSent = peersLimit == 0 ? LONGEST_SENT : Math.min(LONGEST_SENT, Math.max(peersLimit, SHORTEST_SENT));
    }

    /** The table's answer to an event; the driver does what it names. */
    private Action on(Event event) {
        Transition transition = StateTable.of(state, event)
                .orElseThrow(() -> new IllegalStateException(event + " cannot happen in " + state + "."));
        state = transition.next();
        return transition.action();
    }

    /** The next PDU that somebody above must know of; everything else is done here. */
    private Pdu receive(Duration wait) throws PeerFailure {
        while (true) {
            Pdu pdu;
            try {
                pdu = connection.next(wait, LONGEST_DATA_PDU);
                if (pdu instanceof Pdu.Data data) {
                    received = values(data.length());
                }
            } catch (InvalidPdu e) {
                throw invalid(e);
            } catch (SocketTimeoutException e) {
                throw tooLate();
            } catch (IOException e) {
                throw closed(e);
            }
            if (done(on(event(pdu)), pdu)) {
                return pdu;
            }
        }
    }

    private ByteBuffer values(int length) throws IOException {
        byte[] bytes = new byte[length];
        connection.read(bytes, 0, length);
        return ByteBuffer.wrap(bytes);
    }

    private static Event event(Pdu pdu) {
        if (pdu instanceof Pdu.AssociateRequest || pdu instanceof Pdu.ForeignAssociateRequest) {
            return Event.ASSOCIATE_RQ_PDU;
        }
        if (pdu instanceof Pdu.AssociateAccept) {
            return Event.ASSOCIATE_AC_PDU;
        }
        if (pdu instanceof Pdu.AssociateReject) {
            return Event.ASSOCIATE_RJ_PDU;
        }
        if (pdu instanceof Pdu.Data) {
            return Event.DATA_PDU;
        }
        if (pdu instanceof Pdu.ReleaseRequest) {
            return Event.RELEASE_RQ_PDU;
        }
        return pdu instanceof Pdu.ReleaseReply ? Event.RELEASE_RP_PDU : Event.ABORT_PDU;
    }

    /** Does the action a PDU led to; true where the caller goes on with the PDU. */
    private boolean done(Action action, Pdu pdu) throws PeerFailure {
        switch (action) {
            case AE_3 -> agree(((Pdu.AssociateAccept) pdu).agreement());
            case AE_4 -> throw rejected(((Pdu.AssociateReject) pdu).rejection());
            case AE_6, DT_2, AR_2, AR_6, AR_10 -> {}
            case AR_3 -> connection.close();
            case AR_8 -> state = requestor ? State.STA9 : State.STA10;
            case AA_2, AA_3 -> throw aborted();
            case AA_1 -> throw broken(Pdu.Abort.BY_USER);
            case AA_8 -> throw broken(Pdu.Abort.BY_PROVIDER);
            case AA_6 -> {
                return false;
            }
            default -> throw new IllegalStateException("No PDU leads to " + action.title() + ".");
        }
        return true;
    }

    private void agree(Agreement answered) {
        agreement = answered;
        limitSent(answered.maxPduBytes());
    }

    private PeerFailure rejected(Rejection why) {
        connection.close();
        return new PeerFailure(
                why.isTransient() ? PeerFailure.Kind.REJECTED_TRANSIENT : PeerFailure.Kind.REJECTED,
                "The peer rejected the association: " + why.words() + ".");
    }

    private PeerFailure aborted() {
        connection.close();
        return new PeerFailure(PeerFailure.Kind.ABORTED, "The peer aborted the association.");
    }

    private PeerFailure broken(int source) {
        abort(new Pdu.Abort(source, source == Pdu.Abort.BY_PROVIDER ? Pdu.Abort.UNEXPECTED_PDU : 0));
        return new PeerFailure(PeerFailure.Kind.PROTOCOL, "The peer sent a PDU that cannot come at this point.");
    }

    private PeerFailure invalid(InvalidPdu why) {
        Action action = on(Event.INVALID_PDU);
        abort(
                action == Action.AA_1
                        ? new Pdu.Abort(Pdu.Abort.BY_USER, 0)
                        : new Pdu.Abort(Pdu.Abort.BY_PROVIDER, why.reason()));
        return new PeerFailure(PeerFailure.Kind.PROTOCOL, "The peer broke the protocol: " + why.getMessage());
    }

    private PeerFailure tooLate() {
        if (state == State.STA2) {
            on(Event.ARTIM_EXPIRED);
            connection.close();
        } else {
            on(Event.ABORT_REQUEST);
            abort(new Pdu.Abort(Pdu.Abort.BY_USER, 0));
        }
        return new PeerFailure(PeerFailure.Kind.TIMEOUT, "The peer did not answer in time.");
    }

    private PeerFailure closed(IOException cause) {
        on(Event.TRANSPORT_CLOSED);
        connection.close();
        return new PeerFailure(
                PeerFailure.Kind.ABORTED,
                cause instanceof EOFException
                        ? "The peer closed the connection without a word."
                        : "The connection to the peer broke.",
                cause);
    }

    private void abort(Pdu.Abort abort) {
        try {
            connection.write(AssociateWriter.abort(abort));
        } catch (IOException e) {
            connection.close(); // it is over in any case
        }
        end();
    }

    /** Sta13: the peer closes the connection, or the ARTIM timer does. */
    private void end() {
        on(connection.awaitClose(timeouts.artim()) ? Event.TRANSPORT_CLOSED : Event.ARTIM_EXPIRED);
        connection.close();
    }

    private void send(byte[] pdu) throws PeerFailure {
        send(pdu, pdu.length);
    }

    private void send(byte[] pdu, int count) throws PeerFailure {
        try {
            connection.write(pdu, count);
        } catch (IOException e) {
            throw closed(e);
        }
    }

    Proposal proposal() {
        return proposal;
    }

    /** The transfer syntax of an accepted presentation context. */
    Optional<String> transferSyntax(int contextId) {
        return agreement.answers().stream()
                .filter(answer -> answer.id() == contextId && answer.result() == Result.ACCEPTANCE)
                .map(Answer::transferSyntax)
                .findFirst();
    }

    String abstractSyntax(int contextId) {
        return proposal.contexts().stream()
                .filter(context -> context.id() == contextId)
                .map(Proposal.Context::abstractSyntax)
                .findFirst()
                .orElse("");
    }

    /** What was negotiated for a kind of object or service. */
    public record Negotiated(int contextId, String transferSyntax) {}

    /** The first accepted context for an abstract syntax in one of the transfer syntaxes. */
    public Optional<Negotiated> negotiated(String abstractSyntax, List<String> transferSyntaxes) {
        return proposal.contexts().stream()
                .filter(context -> context.abstractSyntax().equals(abstractSyntax))
                .flatMap(context -> transferSyntax(context.id()).stream()
                        .filter(transferSyntaxes::contains)
                        .map(syntax -> new Negotiated(context.id(), syntax)))
                .findFirst();
    }

    /** Why there is no context for an abstract syntax, in words. */
    public String refusal(String abstractSyntax) {
        return proposal.contexts().stream()
                .filter(context -> context.abstractSyntax().equals(abstractSyntax))
                .flatMap(context -> agreement.answers().stream().filter(answer -> answer.id() == context.id()))
                .filter(answer -> answer.result() != Result.ACCEPTANCE)
                .map(answer -> answer.result().words())
                .findFirst()
                .orElse("not answered");
    }

    /** Whether the association can carry messages. */
    public boolean isOpen() {
        return state == State.STA6;
    }

    /** A number for the next message, 1 to 65535. */
    int nextMessageId() {
        messages = messages % 0xffff + 1;
        return messages;
    }

    void send(int contextId, CommandSet command) throws PeerFailure {
        requireOpen();
        try {
            fragments(contextId, COMMAND_FRAGMENT, InputStream.nullInputStream(), command.encode());
        } catch (PeerFailure e) {
            throw e;
        } catch (IOException e) {
            throw new IllegalStateException("Bytes in memory can be read.", e);
        }
    }

    /**
     * Sends a message with its data set, which is read from the stream as it goes out.
     *
     * @throws PeerFailure where the peer is to blame
     * @throws IOException where the stream is; the association is aborted, because half a data set cannot be taken back
     */
    void send(int contextId, CommandSet command, InputStream data) throws IOException {
        send(contextId, command.withDataSet());
        try {
            fragments(contextId, 0, data, new byte[0]);
        } catch (PeerFailure e) {
            throw e;
        } catch (IOException e) {
            abort();
            throw e;
        }
    }

    /** DT-1: one P-DATA-TF with one presentation data value for each fragment. Source: PS3.8, 9.3.5 and annex E. */
    private void fragments(int contextId, int kind, InputStream data, byte[] first) throws IOException {
        byte[] pdu = new byte[PduType.HEADER_BYTES + longestSent];
        int room = longestSent - PDV_HEADER_BYTES;
        InputStream in = kind == COMMAND_FRAGMENT ? new ByteArrayInputStream(first) : data;
        int start = PduType.HEADER_BYTES + PDV_HEADER_BYTES;
        int count = in.readNBytes(pdu, start, room);
        boolean last;
        do {
            byte[] ahead = count == room ? in.readNBytes(1) : new byte[0];
            last = ahead.length == 0;
            ByteBuffer.wrap(pdu)
                    .put((byte) PduType.DATA)
                    .put((byte) 0)
                    .putInt(count + PDV_HEADER_BYTES)
                    .putInt(count + 2)
                    .put((byte) contextId)
                    .put((byte) (kind | (last ? LAST_FRAGMENT : 0)));
            on(Event.DATA_REQUEST);
            send(pdu, start + count);
            if (!last) {
                pdu[start] = ahead[0];
                count = 1 + in.readNBytes(pdu, start + 1, room - 1);
            }
        } while (!last);
    }

    /**
     * The next message; empty when the peer has released the association.
     *
     * @param wait for its first byte
     */
    Optional<Message> nextMessage(Duration wait) throws PeerFailure {
        if (arriving.isPresent()) {
            drop(arriving.get());
        }
        requireOpen();
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
            Pdu pdu = receive(wait);
            if (pdu instanceof Pdu.ReleaseRequest) {
                on(Event.RELEASE_RESPONSE);
                send(AssociateWriter.release(PduType.RELEASE_RP));
                end();
                return Optional.empty();
            }
        }
        long length = received.remaining() < Integer.BYTES ? -1 : received.getInt() & 0xffffffffL;
        if (length < 2 || length > received.remaining()) {
            throw invalid(new InvalidPdu("A presentation data value does not fit its PDU."));
        }
        int contextId = received.get() & 0xff;
        int control = received.get();
        ByteBuffer bytes = received.slice(received.position(), (int) length - 2);
        received.position(received.position() + bytes.capacity());
        if (transferSyntax(contextId).isEmpty()) {
            throw invalid(new InvalidPdu("Data came in a presentation context that was not accepted."));
        }
        return Optional.of(
                new Pdv(contextId, (control & COMMAND_FRAGMENT) != 0, (control & LAST_FRAGMENT) != 0, bytes));
    }

    private Pdv nextPdv(int contextId, boolean command) throws PeerFailure {
        Pdv next = nextPdv(timeouts.idle())
                .orElseThrow(() -> new PeerFailure(
                        PeerFailure.Kind.PROTOCOL, "The peer released the association in the middle of a message."));
        if (next.contextId() != contextId || next.command() != command) {
            throw invalid(new InvalidPdu("Fragments of different messages are mixed."));
        }
        return next;
    }

    private CommandSet command(Pdv first) throws PeerFailure {
        if (!first.command()) {
            throw invalid(new InvalidPdu("A message does not begin with its command."));
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
            throw invalid(e);
        }
    }

    private void append(ByteArrayOutputStream whole, Pdv fragment) throws PeerFailure {
        byte[] bytes = new byte[fragment.bytes().remaining()];
        fragment.bytes().get(bytes);
        whole.writeBytes(bytes);
        if (whole.size() > CommandSet.LONGEST) {
            throw invalid(new InvalidPdu("A command set is longer than " + CommandSet.LONGEST + " bytes."));
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
                requireOpen();
                Pdv next = nextPdv(contextId, false);
                fragment = next.bytes();
                last = next.last();
            }
            int count = Math.min(length, fragment.remaining());
            fragment.get(into, offset, count);
            return count;
        }
    }

    private void requireOpen() throws PeerFailure {
        if (!isOpen()) {
            throw new PeerFailure(PeerFailure.Kind.ABORTED, "The association is over.");
        }
    }

    /** Ends the association in order. Source: DICOM PS3.8, 9.1.2; a collision of two releases included. */
    void release() throws PeerFailure {
        requireOpen();
        on(Event.RELEASE_REQUEST);
        send(AssociateWriter.release(PduType.RELEASE_RQ));
        while (state != State.STA1) {
            Pdu pdu = receive(timeouts.artim());
            if (pdu instanceof Pdu.ReleaseRequest && state == State.STA9) {
                on(Event.RELEASE_RESPONSE);
                send(AssociateWriter.release(PduType.RELEASE_RP));
            } else if (state == State.STA12) {
                on(Event.RELEASE_RESPONSE);
                send(AssociateWriter.release(PduType.RELEASE_RP));
                end();
            }
        }
    }

    /** Ends the association at once, as after an answer that cannot be trusted. */
    void abort() {
        if (state != State.STA1 && StateTable.of(state, Event.ABORT_REQUEST).isPresent()) {
            on(Event.ABORT_REQUEST);
            abort(new Pdu.Abort(Pdu.Abort.BY_USER, 0));
        }
    }

    /** Releases it where it is open; what goes wrong then changes nothing any more. */
    @Override
    public void close() {
        if (isOpen()) {
            try {
                release();
            } catch (PeerFailure e) {
                connection.close();
            }
        }
        connection.close();
    }
}
