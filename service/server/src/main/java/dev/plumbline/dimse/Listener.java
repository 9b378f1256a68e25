// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dimse.Association.Rejected;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.security.cert.X509Certificate;
import java.util.Optional;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.SSLSocketFactory;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Our open door for associations, from {@link #start} to {@link #close}.
 *
 * <p>A connection costs a small buffer until it has said what it wants; only then does it get one of a bounded number of
 * threads, which it loses again as soon as there is nothing more to say to it. Only an accepted association counts against
 * the limits, so that there is always a thread left to tell one too many that it is.
 */
public final class Listener implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Listener.class);

    private static final int IDLE_THREAD_SECONDS = 10;

    private final Settings settings;
    private final Services services;
    private final Acceptance acceptance;
    private final Guests guests;
    private final ThreadPoolExecutor workers;
    private final Handshakes handshakes;
    private final Complaints complaints = new Complaints(LOG);
    private final Antechamber antechamber;

    /**
     * How the door behaves.
     *
     * @param aeTitle ours
     * @param tls asked for at each connection: callers must show a certificate that it trusts; empty for plain TCP
     */
    public record Settings(
            String aeTitle,
            InetSocketAddress address,
            Optional<Supplier<SSLContext>> tls,
            Callers callers,
            Limits limits,
            Timeouts timeouts) {}

    /** How many associations at once, in all and from one peer. */
    public record Limits(int associations, int perPeer) {
        /** Source: design choice, TRUST 2.2. */
        public static final Limits USUAL = new Limits(100, 10);
    }

    private Listener(Settings settings, Services services) throws IOException {
        this.settings = settings;
        this.services = services;
        this.acceptance = new Acceptance(settings.aeTitle(), settings.callers());
        this.guests = new Guests(settings.limits());
        AtomicInteger count = new AtomicInteger();
        int threads = settings.limits().associations() + Handshakes.PLACES;
        this.workers = new ThreadPoolExecutor(
                threads,
                threads,
                IDLE_THREAD_SECONDS,
                TimeUnit.SECONDS,
                new LinkedBlockingQueue<>(),
                work -> new Thread(work, "dimse-" + count.incrementAndGet()));
        workers.allowCoreThreadTimeOut(true);
        this.handshakes = new Handshakes(workers, settings.timeouts().artim());
        this.antechamber =
                new Antechamber(settings.address(), settings.timeouts().artim(), new Entrance());
    }

    /** Opens the door; who calls is answered as soon as this returns. */
    public static Listener start(Settings settings, Services services) {
        try {
            Listener listener = new Listener(settings, services);
            listener.antechamber.open();
            return listener;
        } catch (IOException e) {
            throw new UncheckedIOException("Cannot listen at " + settings.address(), e);
        }
    }

    public int port() {
        return antechamber.port();
    }

    /** Associations at this moment. */
    public int associations() {
        return guests.size();
    }

    /** Where connections come in that have spoken. */
    private final class Entrance implements Antechamber.Admission {
        @Override
        public void admit(Socket socket, byte[] begun) {
            if (settings.tls().isPresent()) {
                boolean expected = settings.callers().mayAnybodyCallFrom(socket.getInetAddress());
                handshakes.admit(socket, expected, place -> serve(new Visit(socket, Optional.of(place)), begun));
            } else {
                workers.execute(() -> serve(new Visit(socket, Optional.empty()), begun));
            }
        }

        @Override
        public void tick() {
            handshakes.makeRoom();
        }
    }

    private void serve(Visit visit, byte[] begun) {
        try (visit;
                Connection connection = connection(visit, begun)) {
            Optional<Association> accepted = Association.accept(connection, settings.timeouts(), visit);
            visit.known();
            if (accepted.isPresent()) {
                new Provider(accepted.get(), services).serve(settings.timeouts().idle());
            }
        } catch (IOException e) {
            complaints.tell("An association ended early: " + e.getMessage());
        } catch (RuntimeException e) {
            LOG.error("An association ended by a fault of ours.", e);
        }
    }

    /** One caller from its first message to the end of its association. */
    private final class Visit implements Association.Host, AutoCloseable {
        private final Socket socket;
        private final Optional<Handshakes.Place> place;
        private Optional<String> entered = Optional.empty();
        private Optional<X509Certificate> certificate = Optional.empty();
        private boolean seenOut;

        Visit(Socket socket, Optional<Handshakes.Place> place) {
            this.socket = socket;
            this.place = place;
        }

        @Override
        public Agreement judge(Proposal proposal) throws Rejected {
            Agreement agreement = acceptance.judge(proposal, new Caller(socket.getInetAddress(), certificate));
            String caller = proposal.titles().calling();
            if (!guests.enter(caller)) {
                throw new Rejected(Rejection.LOCAL_LIMIT_EXCEEDED);
            }
            entered = Optional.of(caller);
            return agreement;
        }

        @Override
        public Association.Farewell farewell() {
            return connection -> {
                connection.handOver();
                seenOut = true;
                return true;
            };
        }

        void handshaken(SSLSocket secured) throws IOException {
            certificate = Optional.of((X509Certificate) secured.getSession().getPeerCertificates()[0]);
            place.ifPresent(Handshakes.Place::renew);
        }

        void known() {
            place.ifPresent(Handshakes.Place::leave);
        }

        @Override
        public void close() {
            entered.ifPresent(guests::leave);
            if (seenOut) {
                antechamber.seeOut(socket);
            } else {
                Connection.closeQuietly(socket);
            }
        }
    }

    private Connection connection(Visit visit, byte[] begun) throws IOException {
        Socket socket = visit.socket;
        if (settings.tls().isEmpty()) {
            return new Connection(socket, begun, settings.timeouts().idle());
        }
        ScheduledFuture<?> end =
                Connection.closeAfter(socket, settings.timeouts().artim());
        try {
            SSLSocketFactory factory = settings.tls().get().get().getSocketFactory();
            SSLSocket secured = (SSLSocket) factory.createSocket(socket, new ByteArrayInputStream(begun), true);
            SSLParameters parameters = secured.getSSLParameters();
            parameters.setNeedClientAuth(true);
            parameters.setProtocols(Requestor.TLS_VERSIONS);
            secured.setSSLParameters(parameters);
            secured.setUseClientMode(false);
            secured.startHandshake();
            visit.handshaken(secured);
            return new Connection(secured, new byte[0], settings.timeouts().idle());
        } finally {
            end.cancel(false);
        }
    }

    @Override
    public void close() {
        antechamber.close();
        handshakes.close();
        workers.shutdownNow();
        antechamber.closeAdmitted();
        try {
            if (!workers.awaitTermination(settings.timeouts().artim().toMillis(), TimeUnit.MILLISECONDS)) {
                LOG.warn("{} associations did not end in time.", workers.getActiveCount());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
