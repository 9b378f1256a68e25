// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dimse.StateTable.Transition;
import java.io.ByteArrayInputStream;
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

    private final Connection connection;
    private final Timeouts timeouts;
    private final boolean requestor;
    private State state;
    private Proposal proposal;
    private Agreement agreement;
    private int longestSent = LONGEST_SENT;
    private int messages;

    private final IncomingMessages incoming;
    private final Farewell farewell;

    private Association(Connection connection, Timeouts timeouts, Optional<Host> host) {
        this.connection = connection;
        this.timeouts = timeouts;
        this.requestor = host.isEmpty();
        this.farewell = host.map(Host::farewell).orElse(Farewell.ON_THE_SPOT);
        this.state = requestor ? State.STA4 : State.STA2;
        this.incoming = new IncomingMessages(this, timeouts.idle());
        Proposal.AeTitles nobody = new Proposal.AeTitles("", "");
        this.proposal = new Proposal(nobody, "", List.of(), 0, List.of());
        this.agreement = new Agreement(nobody, List.of(), 0, List.of());
    }

    /** Source: DICOM PS3.8, 9.1.1, the requestor's side: from the open connection (Sta4) to the agreement (Sta6). */
    static Association request(Connection connection, Timeouts timeouts, Proposal proposal) throws PeerFailure {
        Association association = new Association(connection, timeouts, Optional.empty());
        association.proposal = proposal;
        association.on(Event.TRANSPORT_CONNECTED);
        association.send(AssociateWriter.request(proposal));
        association.receive(timeouts.connect());
        return association;
    }

    /** How an acceptor receives those that call. */
    interface Host {
        /** The answer to a request that is accepted. */
        Agreement judge(Proposal proposal) throws Rejected;

        default Farewell farewell() {
            return Farewell.ON_THE_SPOT;
        }
    }

    /** Where it is waited for the peer to close the connection: Sta13. */
    interface Farewell {
        /** Here, in the thread of the association. */
        Farewell ON_THE_SPOT = connection -> false;

        /** True where the connection was handed over to somebody who waits for its end and closes it. */
        boolean take(Connection connection);
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
    static Optional<Association> accept(Connection connection, Timeouts timeouts, Host host) throws PeerFailure {
        Association association = new Association(connection, timeouts, Optional.of(host));
        Pdu pdu = association.receive(timeouts.artim());
        try {
            if (!(pdu instanceof Pdu.AssociateRequest request)) {
                throw new Rejected(Rejection.PROTOCOL_VERSION_NOT_SUPPORTED);
            }
            association.proposal = request.proposal();
            association.agreement = host.judge(request.proposal());
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
    Pdu receive(Duration wait) throws PeerFailure {
        while (true) {
            Pdu pdu;
            try {
                pdu = connection.next(wait, state == State.STA2 ? 0 : LONGEST_DATA_PDU);
                if (pdu instanceof Pdu.Data data) {
                    incoming.take(values(data.length()));
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

    /** Aborts because of what came, whose values were already looked into. */
    PeerFailure invalid(InvalidPdu why) {
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

    /** Sta13: the peer closes the connection, or the ARTIM timer does, here or where connections are seen out. */
    private void end() {
        if (farewell.take(connection)) {
            return;
        }
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

    /** What its presentation contexts carry. */
    Contexts contexts() {
        return new Contexts(proposal, agreement);
    }

    /** What was negotiated for a kind of object or service. */
    public record Negotiated(int contextId, String transferSyntax) {}

    /** The first accepted context for an abstract syntax in one of the transfer syntaxes. */
    public Optional<Negotiated> negotiated(String abstractSyntax, List<String> transferSyntaxes) {
        return contexts().negotiated(abstractSyntax, transferSyntaxes);
    }

    /** Why there is no context for an abstract syntax, in words. */
    public String refusal(String abstractSyntax) {
        return contexts().refusal(abstractSyntax);
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
            fragments(contextId, IncomingMessages.COMMAND_FRAGMENT, InputStream.nullInputStream(), command.encode());
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
        InputStream in = kind == IncomingMessages.COMMAND_FRAGMENT ? new ByteArrayInputStream(first) : data;
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
                    .put((byte) (kind | (last ? IncomingMessages.LAST_FRAGMENT : 0)));
            on(Event.DATA_REQUEST);
            send(pdu, start + count);
            if (!last) {
                pdu[start] = ahead[0];
                count = 1 + in.readNBytes(pdu, start + 1, room - 1);
            }
        } while (!last);
    }

    void requireOpen() throws PeerFailure {
        if (!isOpen()) {
            throw new PeerFailure(PeerFailure.Kind.ABORTED, "The association is over.");
        }
    }

    /**
     * The next message; empty when the peer has released the association.
     *
     * @param wait for its first byte
     */
    Optional<Message> nextMessage(Duration wait) throws PeerFailure {
        return incoming.next(wait);
    }

    /** Whether something of the peer is there, or comes within the wait: a message, its wish to end, or its end. */
    boolean isSpokenTo(Duration wait) throws PeerFailure {
        requireOpen();
        try {
            return incoming.hasMore() || connection.isSpokenTo(wait);
        } catch (IOException e) {
            throw closed(e);
        }
    }

    /** The peer's wish to end the association is granted. Source: DICOM PS3.8, 9.1.2. */
    void answerRelease() throws PeerFailure {
        on(Event.RELEASE_RESPONSE);
        send(AssociateWriter.release(PduType.RELEASE_RP));
        end();
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
