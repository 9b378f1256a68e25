// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.StandardSocketOptions;
import java.nio.ByteBuffer;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Where connections wait before and after their association: until they have said what they want, and, once there is
 * nothing more to say to them, until they close (Sta13). One thread and a small buffer each, so that thousands of them hold
 * nobody up. Who stays too long loses the connection when the ARTIM timer expires (PS3.8, 9.1.5), and the one that has
 * stayed the longest goes when there are too many.
 */
final class Antechamber implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Antechamber.class);

    /** Connections at most that come, and as many that go. Source: design choice. */
    private static final int MOST_WAITING = 4_096;

    /** What all of them together may have said meanwhile. Source: design choice. */
    private static final long MOST_SAID_BYTES = 32L << 20;

    private static final int BACKLOG = 1_024;
    private static final int BUFFER_BYTES = 8 * 1_024;
    private static final long TICK_MILLISECONDS = 50;

    private final ServerSocketChannel server;
    private final Selector selector;
    private final Duration artim;
    private final Admission admission;
    private final ByteBuffer buffer = ByteBuffer.allocate(BUFFER_BYTES);
    private final Set<Guest> coming = new LinkedHashSet<>();
    private final Set<Guest> going = new LinkedHashSet<>();
    private final Queue<SocketChannel> leaving = new ConcurrentLinkedQueue<>();
    private final Set<Socket> admitted = ConcurrentHashMap.newKeySet();
    private final Thread thread = new Thread(this::run, "dimse-antechamber");
    private long saidBytes;
    private volatile boolean open = true;

    /** What happens to a connection that has spoken. */
    interface Admission {
        /** Serves it, without making the antechamber wait. */
        void admit(Socket socket, byte[] begun);

        /** Some tenths of a second have passed at most. */
        void tick();
    }

    Antechamber(InetSocketAddress address, Duration artim, Admission admission) throws IOException {
        this.artim = artim;
        this.admission = admission;
        this.selector = Selector.open();
        this.server = ServerSocketChannel.open();
        try {
            server.setOption(StandardSocketOptions.SO_REUSEADDR, true);
            server.bind(address, BACKLOG);
            server.configureBlocking(false);
            server.register(selector, SelectionKey.OP_ACCEPT);
        } catch (IOException e) {
            server.close();
            selector.close();
            throw e;
        }
    }

    void open() {
        thread.start();
    }

    int port() {
        return server.socket().getLocalPort();
    }

    private void run() {
        while (open) {
            try {
                selector.select(TICK_MILLISECONDS);
                List<Guest> spoken = new ArrayList<>();
                for (SelectionKey key : selector.selectedKeys()) {
                    if (key.isValid() && key.isAcceptable()) {
                        accept();
                    } else if (key.isValid() && key.isReadable() && read(key)) {
                        spoken.add((Guest) key.attachment());
                    }
                }
                selector.selectedKeys().clear();
                admit(spoken);
                takeBack();
                expire();
                admission.tick();
            } catch (IOException e) {
                LOG.error("Connections cannot be accepted for the moment.", e);
                pause();
            }
        }
    }

    /** As when no file descriptors are left; without a pause the log would fill the disk. */
    private static void pause() {
        try {
            Thread.sleep(TICK_MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** A connection that comes, which is listened to, or one that goes, of which nothing more counts. */
    private static final class Guest {
        private final SocketChannel channel;
        private final Set<Guest> among;
        private final long deadline;
        private final FirstWords words = new FirstWords();

        Guest(SocketChannel channel, Set<Guest> among, long deadline) {
            this.channel = channel;
            this.among = among;
            this.deadline = deadline;
        }
    }

    private void accept() throws IOException {
        for (SocketChannel channel = server.accept(); channel != null; channel = server.accept()) {
            watch(channel, coming);
        }
    }

    private void watch(SocketChannel channel, Set<Guest> among) throws IOException {
        channel.configureBlocking(false);
        Guest guest = new Guest(channel, among, System.nanoTime() + artim.toNanos());
        channel.register(selector, SelectionKey.OP_READ, guest);
        among.add(guest);
        if (among.size() > MOST_WAITING) {
            drop(among.iterator().next());
        }
    }

    /** True where the connection has spoken; it is no longer watched then. */
    private boolean read(SelectionKey key) {
        Guest guest = (Guest) key.attachment();
        buffer.clear();
        try {
            if (guest.channel.read(buffer) < 0) {
                drop(guest);
                return false;
            }
        } catch (IOException e) {
            drop(guest);
            return false;
        }
        if (guest.among == going) {
            return false;
        }
        buffer.flip();
        saidBytes += buffer.remaining();
        guest.words.take(buffer);
        if (guest.words.areWhole()) {
            key.cancel();
            return true;
        }
        while (saidBytes > MOST_SAID_BYTES && !coming.isEmpty()) {
            drop(coming.iterator().next());
        }
        return false;
    }

    private void admit(List<Guest> spoken) throws IOException {
        if (spoken.isEmpty()) {
            return;
        }
        selector.selectNow(); // a channel may block again only when its cancelled key is gone
        admitted.removeIf(Socket::isClosed);
        long now = System.nanoTime();
        spoken.sort(Comparator.comparingLong(guest -> guest.deadline - now)); // in the order in which they came
        for (Guest guest : spoken) {
            if (!forget(guest)) {
                continue; // it was dropped for want of room after it had spoken
            }
            Socket socket = guest.channel.socket();
            admitted.add(socket);
            guest.channel.configureBlocking(true);
            admission.admit(socket, guest.words.bytes());
        }
    }

    /**
     * Waits in the caller's place until the peer closes the connection or the ARTIM timer expires: Sta13. Nobody may read
     * from the socket any more.
     */
    void seeOut(Socket socket) {
        leaving.add(socket.getChannel());
        selector.wakeup();
    }

    private void takeBack() {
        for (SocketChannel channel = leaving.poll(); channel != null; channel = leaving.poll()) {
            try {
                admitted.remove(channel.socket());
                watch(channel, going);
            } catch (IOException e) {
                Connection.closeQuietly(channel.socket()); // it is closed already
            }
        }
    }

    private void expire() {
        long now = System.nanoTime();
        for (Set<Guest> guests : List.of(coming, going)) {
            while (!guests.isEmpty() && guests.iterator().next().deadline - now < 0) {
                drop(guests.iterator().next());
            }
        }
    }

    private boolean forget(Guest guest) {
        boolean known = guest.among.remove(guest);
        if (known) {
            saidBytes -= guest.words.bytes().length;
        }
        return known;
    }

    private void drop(Guest guest) {
        forget(guest);
        Connection.closeQuietly(guest.channel.socket());
    }

    @Override
    public void close() {
        open = false;
        selector.wakeup();
        try {
            thread.join();
            server.close();
            for (Set<Guest> guests : List.of(Set.copyOf(coming), Set.copyOf(going))) {
                guests.forEach(this::drop);
            }
            selector.close();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (IOException e) {
            LOG.warn("The listening socket could not be closed: {}", e.getMessage());
        }
    }

    /** Ends every association that is still served, by its connection. */
    void closeAdmitted() {
        admitted.forEach(Connection::closeQuietly);
    }
}
