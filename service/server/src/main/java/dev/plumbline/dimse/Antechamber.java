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
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Where connections wait until they have said something: one thread and a small buffer each, so that thousands of silent
 * ones hold nobody up. One that stays silent loses the connection when the ARTIM timer expires (PS3.8, 9.1.5), and the
 * oldest silent one goes when there are too many.
 *
 * <p>A connection leaves this room with its first whole message: a PDU of the upper layer, or a record of TLS (RFC 8446,
 * 5.1), whose headers both state the length.
 */
final class Antechamber implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Antechamber.class);

    /** Silent connections at most. Source: design choice. */
    private static final int MOST_WAITING = 4_096;

    private static final int BACKLOG = 1_024;
    private static final int FIRST_BYTES = 1_024;
    private static final int TLS_HANDSHAKE = 22;
    private static final int TLS_HEADER_BYTES = 5;
    private static final long TICK_MILLISECONDS = 100;

    private final ServerSocketChannel server;
    private final Selector selector;
    private final Duration artim;
    private final Admission admission;
    private final Set<Waiting> waiting = new LinkedHashSet<>();
    private final Set<Socket> admitted = ConcurrentHashMap.newKeySet();
    private final Thread thread = new Thread(this::run, "dimse-antechamber");
    private volatile boolean open = true;

    /** What happens to a connection that has spoken. */
    interface Admission {
        /** Serves it, or says false where it cannot be served. */
        boolean admit(Socket socket, byte[] begun);
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
                List<Waiting> spoken = new ArrayList<>();
                for (SelectionKey key : selector.selectedKeys()) {
                    if (key.isValid() && key.isAcceptable()) {
                        accept();
                    } else if (key.isValid() && key.isReadable() && read(key)) {
                        spoken.add((Waiting) key.attachment());
                    }
                }
                selector.selectedKeys().clear();
                admit(spoken);
                expire();
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

    /** A connection that has not yet said what it wants. */
    private static final class Waiting {
        private final SocketChannel channel;
        private final long deadline;
        private byte[] begun = new byte[0];

        Waiting(SocketChannel channel, long deadline) {
            this.channel = channel;
            this.deadline = deadline;
        }
    }

    private void accept() throws IOException {
        for (SocketChannel channel = server.accept(); channel != null; channel = server.accept()) {
            channel.configureBlocking(false);
            Waiting guest = new Waiting(channel, System.nanoTime() + artim.toNanos());
            channel.register(selector, SelectionKey.OP_READ, guest);
            waiting.add(guest);
            if (waiting.size() > MOST_WAITING) {
                drop(waiting.iterator().next());
            }
        }
    }

    /** True where the connection has spoken; it is no longer watched then. */
    private boolean read(SelectionKey key) {
        Waiting guest = (Waiting) key.attachment();
        ByteBuffer bytes = ByteBuffer.allocate(FIRST_BYTES);
        try {
            int count = guest.channel.read(bytes);
            if (count < 0) {
                drop(guest);
                return false;
            }
            int had = guest.begun.length;
            guest.begun = Arrays.copyOf(guest.begun, had + count);
            System.arraycopy(bytes.array(), 0, guest.begun, had, count);
        } catch (IOException e) {
            drop(guest);
            return false;
        }
        if (hasSpoken(guest.begun)) {
            key.cancel();
            return true;
        }
        return false;
    }

    /** Whether a whole first message is there, or one that is too long to wait for. */
    private static boolean hasSpoken(byte[] begun) {
        if (begun.length >= Connection.LONGEST_ASSOCIATE) {
            return true;
        }
        if (begun.length > 0 && begun[0] == TLS_HANDSHAKE) {
            return begun.length >= TLS_HEADER_BYTES
                    && begun.length >= TLS_HEADER_BYTES + ((begun[3] & 0xff) << Byte.SIZE | (begun[4] & 0xff));
        }
        if (begun.length < PduType.HEADER_BYTES) {
            return begun.length > 0 && begun[0] != PduType.ASSOCIATE_RQ;
        }
        long length = ByteBuffer.wrap(begun).getInt(2) & 0xffffffffL;
        return begun[0] != PduType.ASSOCIATE_RQ
                || length > Connection.LONGEST_ASSOCIATE
                || begun.length >= PduType.HEADER_BYTES + length;
    }

    private void admit(List<Waiting> spoken) throws IOException {
        if (spoken.isEmpty()) {
            return;
        }
        selector.selectNow(); // a channel may block again only when its cancelled key is gone
        admitted.removeIf(Socket::isClosed);
        for (Waiting guest : spoken) {
            waiting.remove(guest);
            Socket socket = guest.channel.socket();
            admitted.add(socket);
            guest.channel.configureBlocking(true);
            if (!admission.admit(socket, guest.begun)) {
                Connection.closeQuietly(socket);
            }
        }
    }

    private void expire() {
        long now = System.nanoTime();
        while (!waiting.isEmpty() && waiting.iterator().next().deadline - now < 0) {
            drop(waiting.iterator().next());
        }
    }

    private void drop(Waiting guest) {
        waiting.remove(guest);
        Connection.closeQuietly(guest.channel.socket());
    }

    @Override
    public void close() {
        open = false;
        selector.wakeup();
        try {
            thread.join();
            server.close();
            for (Waiting guest : Set.copyOf(waiting)) {
                drop(guest);
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
