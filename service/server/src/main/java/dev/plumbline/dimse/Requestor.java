// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dimse.PeerFailure.Kind;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ScheduledFuture;
import javax.net.ssl.SSLException;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.SSLSocketFactory;

/**
 * Opens associations to peers.
 *
 * @param aeTitle ours
 */
public record Requestor(String aeTitle, Timeouts timeouts) {
    private static final int MOST_CONTEXTS = 128;

    /** Protocol versions offered and accepted. Source: DICOM PS3.15, B.12. */
    static final String[] TLS_VERSIONS = {"TLSv1.3", "TLSv1.2"};

    /**
     * Connects, shakes hands and negotiates, each within its bound.
     *
     * @throws PeerFailure with what went wrong in words
     */
    public Association open(Peer peer, List<Wanted> wanted) throws PeerFailure {
        Socket socket = connect(peer);
        try {
            Connection connection = new Connection(secured(peer, socket), new byte[0], timeouts.response());
            return Association.request(connection, timeouts, proposal(peer, wanted));
        } catch (PeerFailure e) {
            Connection.closeQuietly(socket);
            throw e;
        } catch (IOException e) {
            Connection.closeQuietly(socket);
            throw new PeerFailure(Kind.ABORTED, "The connection to the peer broke.", e);
        }
    }

    private Socket connect(Peer peer) throws PeerFailure {
        Socket socket = new Socket();
        try {
            InetSocketAddress address = new InetSocketAddress(peer.host(), peer.port());
            if (address.isUnresolved()) {
                throw new UnknownHostException(peer.host());
            }
            socket.connect(address, Math.toIntExact(timeouts.connect().toMillis()));
            return socket;
        } catch (UnknownHostException e) {
            Connection.closeQuietly(socket);
            throw new PeerFailure(Kind.UNREACHABLE, "The host name " + peer.host() + " is not known.", e);
        } catch (SocketTimeoutException e) {
            Connection.closeQuietly(socket);
            throw new PeerFailure(Kind.TIMEOUT, peer.host() + ":" + peer.port() + " does not answer.", e);
        } catch (IOException e) {
            Connection.closeQuietly(socket);
            throw new PeerFailure(Kind.UNREACHABLE, "Nothing listens at " + peer.host() + ":" + peer.port() + ".", e);
        }
    }

    private Socket secured(Peer peer, Socket plain) throws IOException {
        if (peer.tls().isEmpty()) {
            return plain;
        }
        ScheduledFuture<?> end = Connection.closeAfter(plain, timeouts.connect());
        try {
            SSLSocketFactory factory = peer.tls().get().get().getSocketFactory();
            SSLSocket secured = (SSLSocket) factory.createSocket(plain, peer.host(), peer.port(), true);
            SSLParameters parameters = secured.getSSLParameters();
            parameters.setEndpointIdentificationAlgorithm("HTTPS");
            parameters.setProtocols(TLS_VERSIONS);
            secured.setSSLParameters(parameters);
            secured.startHandshake();
            return secured;
        } catch (SSLException e) {
            throw new PeerFailure(Kind.TLS, TlsWords.of(e), e);
        } finally {
            end.cancel(false);
        }
    }

    private Proposal proposal(Peer peer, List<Wanted> wanted) {
        if (wanted.size() > MOST_CONTEXTS) {
            throw new IllegalArgumentException("An association has at most " + MOST_CONTEXTS + " contexts.");
        }
        List<Proposal.Context> contexts = new ArrayList<>();
        List<Proposal.RoleSelection> roles = new ArrayList<>();
        for (Wanted each : wanted) {
            contexts.add(new Proposal.Context(2 * contexts.size() + 1, each.abstractSyntax(), each.transferSyntaxes()));
            if (each.weProvide() && roles.stream().noneMatch(r -> r.sopClass().equals(each.abstractSyntax()))) {
                roles.add(new Proposal.RoleSelection(each.abstractSyntax(), false, true));
            }
        }
        return new Proposal(
                new Proposal.AeTitles(peer.aeTitle(), aeTitle),
                Proposal.DICOM_APPLICATION_CONTEXT,
                contexts,
                Association.LONGEST_DATA_PDU,
                roles);
    }
}
