// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dimse.Association.Rejected;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.util.Optional;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Our open door for associations, from {@link #start} to {@link #close}.
 *
 * <p>A connection costs a small buffer until it has said what it wants; only then does it get one of a bounded number of
 * threads, and only an accepted association counts against the limits.
 */
public final class Listener implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Listener.class);

    /** Threads beside the associations: for requests that are judged, and TLS handshakes. Source: design choice. */
    private static final int SPARE_THREADS = 32;

    private final Settings settings;
    private final Services services;
    private final Acceptance acceptance;
    private final Guests guests;
    private final ThreadPoolExecutor workers;
    private final Antechamber antechamber;

    /**
     * How the door behaves.
     *
     * @param aeTitle ours
     * @param tls empty for plain TCP; else callers must show a certificate that it trusts
     */
    public record Settings(
            String aeTitle,
            InetSocketAddress address,
            Optional<SSLContext> tls,
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
        this.workers = new ThreadPoolExecutor(
                0,
                settings.limits().associations() + SPARE_THREADS,
                10,
                TimeUnit.SECONDS,
                new SynchronousQueue<>(),
                work -> new Thread(work, "dimse-" + count.incrementAndGet()));
        this.antechamber =
                new Antechamber(settings.address(), settings.timeouts().artim(), this::admit);
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

    /** A connection that has spoken; false where nobody is free to listen to it. */
    private boolean admit(Socket socket, byte[] begun) {
        try {
            workers.execute(() -> serve(socket, begun));
            return true;
        } catch (RejectedExecutionException e) {
            return false;
        }
    }

    private void serve(Socket socket, byte[] begun) {
        try (Visit visit = new Visit(socket.getInetAddress());
                Connection connection = connection(socket, begun)) {
            Optional<Association> accepted = Association.accept(connection, settings.timeouts(), visit);
            if (accepted.isPresent()) {
                new Provider(accepted.get(), services).serve(settings.timeouts().idle());
            }
        } catch (IOException e) {
            LOG.info("An association ended early: {}", e.getMessage());
        } catch (RuntimeException e) {
            LOG.error("An association ended by a fault of ours.", e);
        } finally {
            Connection.closeQuietly(socket);
        }
    }

    /** One caller from the judgement of its request to the end of its association. */
    private final class Visit implements Association.Judgement, AutoCloseable {
        private final InetAddress from;
        private Optional<String> entered = Optional.empty();

        Visit(InetAddress from) {
            this.from = from;
        }

        @Override
        public Agreement judge(Proposal proposal) throws Rejected {
            Agreement agreement = acceptance.judge(proposal, from);
            String caller = proposal.titles().calling();
            if (!guests.enter(caller)) {
                throw new Rejected(Rejection.LOCAL_LIMIT_EXCEEDED);
            }
            entered = Optional.of(caller);
            return agreement;
        }

        @Override
        public void close() {
            entered.ifPresent(guests::leave);
        }
    }

    private Connection connection(Socket socket, byte[] begun) throws IOException {
        if (settings.tls().isEmpty()) {
            return new Connection(socket, begun, settings.timeouts().idle());
        }
        ScheduledFuture<?> end =
                Connection.closeAfter(socket, settings.timeouts().artim());
        try {
            SSLSocket secured = (SSLSocket)
                    settings.tls().get().getSocketFactory().createSocket(socket, new ByteArrayInputStream(begun), true);
            SSLParameters parameters = secured.getSSLParameters();
            parameters.setNeedClientAuth(true);
            parameters.setProtocols(Requestor.TLS_VERSIONS);
            secured.setSSLParameters(parameters);
            secured.setUseClientMode(false);
            secured.startHandshake();
            return new Connection(secured, new byte[0], settings.timeouts().idle());
        } finally {
            end.cancel(false);
        }
    }

    @Override
    public void close() {
        antechamber.close();
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
