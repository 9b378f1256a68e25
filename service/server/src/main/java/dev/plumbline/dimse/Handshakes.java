// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.IOException;
import java.net.Socket;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.concurrent.Executor;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Callers between their first message over TLS and the judgement of their association request. Each of them holds a thread
 * meanwhile, and may fall silent; so there are a few places only. Who comes when all are taken gets the place of the one
 * that has been at it the longest, if that had its fair time; else it waits, and the newest goes in first, because whoever
 * has waited longer is more likely one of a crowd that never meant to go on.
 */
final class Handshakes {
    private static final Logger LOG = LoggerFactory.getLogger(Handshakes.class);

    /** So few that each of them gets its share of the processor. Source: design choice. */
    static final int PLACES = 32;

    /** Nobody is shown out before, though others wait. Some ten times what a handshake takes. Source: design choice. */
    private static final Duration FAIR = Duration.ofMillis(250);

    /** Source: design choice. */
    private static final int MOST_WAITING = 4_096;

    private final Executor workers;
    private final Duration artim;
    private final Deque<Caller> waiting = new ArrayDeque<>();
    private final Set<Caller> inside = new LinkedHashSet<>();

    /**
     * Nobody is inside yet.
     *
     * @param artim how long a caller may wait for a place
     */
    Handshakes(Executor workers, Duration artim) {
        this.workers = workers;
        this.artim = artim;
    }

    /** What is done with a caller that has a place. */
    interface Work {
        /**
         * Does it.
         *
         * @param place given up as soon as the caller is known
         */
        void with(Place place);
    }

    /** A place among those that shake hands. */
    interface Place {
        /** The handshake is done, its request not yet there: the caller gets its fair time once more. */
        void renew();

        /** May be called again; changes nothing then. */
        void leave();
    }

    private final class Caller implements Place, Runnable {
        private final Socket socket;
        private final Work work;
        private long since = System.nanoTime();
        private boolean shownOut;

        Caller(Socket socket, Work work) {
            this.socket = socket;
            this.work = work;
        }

        @Override
        public void run() {
            try {
                work.with(this);
            } finally {
                leave();
            }
        }

        @Override
        public void renew() {
            synchronized (Handshakes.this) {
                if (inside.remove(this)) {
                    since = System.nanoTime();
                    inside.add(this); // the places stay in the order of their time
                }
            }
        }

        @Override
        public void leave() {
            synchronized (Handshakes.this) {
                if (inside.remove(this)) {
                    enterNext();
                }
            }
        }

        private void showOut() {
            try {
                socket.shutdownInput();
            } catch (IOException e) {
                LOG.debug("It has left by itself: {}", e.getMessage());
            }
        }

        private boolean isOlderThan(Duration age) {
            return System.nanoTime() - since > age.toNanos();
        }
    }

    /**
     * Takes a caller in, at once or as soon as there is a place.
     *
     * @param expected whether anybody may call from its address; a stranger hears why not, but nobody waits for it
     */
    synchronized void admit(Socket socket, boolean expected, Work work) {
        if (!expected && inside.size() >= PLACES) {
            Connection.closeQuietly(socket);
            return;
        }
        waiting.addFirst(new Caller(socket, work));
        if (waiting.size() > MOST_WAITING) {
            Connection.closeQuietly(waiting.removeLast().socket);
        }
        enterNext();
        makeRoom();
    }

    /**
     * To be called now and then: shows out who had its time while others wait. A socket that somebody reads from is closed
     * only when the reader has left, which nobody should wait for here; so its reader is told that nothing more comes, and
     * closes it.
     */
    synchronized void makeRoom() {
        while (!waiting.isEmpty() && waiting.getLast().isOlderThan(artim)) {
            Connection.closeQuietly(waiting.removeLast().socket);
        }
        int wanted = waiting.size();
        for (Caller caller : inside) {
            if (wanted == 0 || !caller.isOlderThan(FAIR)) {
                return;
            }
            if (!caller.shownOut) {
                caller.shownOut = true;
                caller.showOut(); // its thread leaves the place
            }
            wanted--;
        }
    }

    private void enterNext() {
        while (!waiting.isEmpty() && inside.size() < PLACES) {
            Caller next = waiting.removeFirst();
            next.since = System.nanoTime();
            inside.add(next);
            workers.execute(next);
        }
    }

    synchronized void close() {
        waiting.forEach(caller -> Connection.closeQuietly(caller.socket));
        waiting.clear();
    }
}
