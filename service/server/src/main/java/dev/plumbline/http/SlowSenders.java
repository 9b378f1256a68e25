// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import java.time.Duration;
import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.Scheduler;

/**
 * Ends what comes too slowly. The server's own idle timeout begins anew with each byte, and of its version 12 the minimum
 * rate of requests is a setting that nothing looks at; so a header has a deadline here, and a body a least rate.
 */
final class SlowSenders extends Handler.Wrapper implements Connection.Listener {
    /** For the whole header of a request. Source: TRUST 2.2 (slow-loris). */
    private static final Duration HEADER = Duration.ofSeconds(10);

    private static final Duration TICK = Duration.ofSeconds(1);

    private final Map<Connection, Guest> guests = new ConcurrentHashMap<>();
    private final Duration patience;
    private volatile boolean open;

    SlowSenders() {
        this(HEADER);
    }

    /**
     * With another patience than the usual one.
     *
     * @param patience for a header, and for a body before its rate counts
     */
    SlowSenders(Duration patience) {
        this.patience = patience;
    }

    /** A connection: while a request of it is answered there is nothing to wait for. */
    private static final class Guest {
        private volatile boolean served;
        private volatile long since = System.nanoTime();

        /** Bytes that had come when the last request was answered; of one that never asked anything every byte counts. */
        private volatile long bytes = -1;
    }

    @Override
    protected void doStart() throws Exception {
        Arrays.stream(getServer().getConnectors()).forEach(connector -> connector.addBean(this, false));
        super.doStart();
        open = true;
        look();
    }

    @Override
    protected void doStop() throws Exception {
        open = false;
        super.doStop();
    }

    @Override
    public void onOpened(Connection connection) {
        guests.put(connection, new Guest());
    }

    @Override
    public void onClosed(Connection connection) {
        guests.remove(connection);
    }

    private void look() {
        if (!open) {
            return;
        }
        guests.forEach(this::look);
        Scheduler scheduler = getServer().getScheduler();
        scheduler.schedule(this::look, TICK.toMillis(), TimeUnit.MILLISECONDS);
    }

    private void look(Connection connection, Guest guest) {
        if (guest.served) {
            return;
        }
        if (connection.getBytesIn() == guest.bytes) {
            guest.since = System.nanoTime(); // nothing has begun; the idle timeout sees to that
        } else if (System.nanoTime() - guest.since > patience.toNanos()) {
            connection.getEndPoint().close();
        }
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        Connection connection = request.getConnectionMetaData().getConnection();
        Guest guest = guests.get(connection);
        if (guest != null) {
            guest.served = true;
            Request.addCompletionListener(request, failure -> {
                guest.bytes = connection.getBytesIn();
                guest.since = System.nanoTime();
                guest.served = false;
            });
        }
        return super.handle(new SteadyBody(request, patience), response, callback);
    }

    /** A body that must keep coming; reading it fails as soon as it is too slow. */
    private static final class SteadyBody extends Request.Wrapper {
        /** Bytes a second, on the average since the header. Source: design choice, below any line that still works. */
        private static final long LEAST_RATE = 1_024;

        private final Duration patience;
        private final long began = System.nanoTime();
        private long bytes;

        SteadyBody(Request request, Duration patience) {
            super(request);
            this.patience = patience;
        }

        @Override
        public Content.Chunk read() {
            Content.Chunk chunk = super.read();
            if (chunk == null || Content.Chunk.isFailure(chunk) || chunk.isLast()) {
                return chunk;
            }
            bytes += chunk.remaining();
            Duration elapsed = Duration.ofNanos(System.nanoTime() - began);
            if (elapsed.compareTo(patience) > 0 && bytes < elapsed.toMillis() * LEAST_RATE / 1_000) {
                chunk.release();
                TooSlow slow = new TooSlow();
                fail(slow);
                return Content.Chunk.from(slow, true);
            }
            return chunk;
        }
    }
}
