// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.SequenceInputStream;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.time.Duration;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One transport connection: PDUs in and out, every wait bounded. A PDU that has begun must arrive whole within the bound,
 * however slowly its bytes drip; a peer that takes nothing off the wire loses the connection.
 */
final class Connection implements AutoCloseable {
    /** Longest A-ASSOCIATE-RQ or -AC that is read. Source: design choice, TRUST 2.2. */
    static final int LONGEST_ASSOCIATE = 64 * 1024;

    private static final Logger LOG = LoggerFactory.getLogger(Connection.class);
    private static final int BUFFER_BYTES = 1 << 16;
    private static final int SHORT_PDU_BYTES = 4;

    private static final ScheduledThreadPoolExecutor WATCH = watch();

    private final Socket socket;
    private final InputStream in;
    private final OutputStream out;
    private final Duration patience;
    private long deadline;
    private boolean handedOver;

    /**
     * Takes over an open socket.
     *
     * @param begun what was read from it already
     * @param patience for the rest of a PDU that has begun, and for a write
     */
    Connection(Socket socket, byte[] begun, Duration patience) throws IOException {
        this.socket = socket;
        this.patience = patience;
        socket.setTcpNoDelay(true);
        InputStream rest = new BufferedInputStream(new PromptInput(socket), BUFFER_BYTES);
        this.in = begun.length == 0 ? rest : new SequenceInputStream(new ByteArrayInputStream(begun), rest);
        this.out = socket.getOutputStream();
    }

    private static ScheduledThreadPoolExecutor watch() {
        ScheduledThreadPoolExecutor watch = new ScheduledThreadPoolExecutor(1, work -> {
            Thread thread = new Thread(work, "dimse-watch");
            thread.setDaemon(true);
            return thread;
        });
        watch.setRemoveOnCancelPolicy(true);
        return watch;
    }

    /** Closes the socket unless cancelled in time. */
    static ScheduledFuture<?> closeAfter(Socket socket, Duration wait) {
        return WATCH.schedule(() -> closeQuietly(socket), wait.toMillis(), TimeUnit.MILLISECONDS);
    }

    /**
     * The next PDU; of P-DATA-TF only its length, the values are read with {@link #read}.
     *
     * @param wait for its first byte
     * @param longestData P-DATA-TF of more bytes is invalid
     * @throws SocketTimeoutException when it does not come in time
     * @throws EOFException when the peer closed the connection between two PDUs
     */
    Pdu next(Duration wait, int longestData) throws IOException {
        deadline = System.nanoTime() + wait.toNanos();
        int type = in(1)[0] & 0xff;
        deadline = System.nanoTime() + patience.toNanos();
        byte[] rest = in(PduType.HEADER_BYTES - 1);
        long length = (rest[1] & 0xffL) << 24 | (rest[2] & 0xff) << 16 | (rest[3] & 0xff) << 8 | (rest[4] & 0xff);
        return switch (type) {
            case PduType.ASSOCIATE_RQ -> request(in(bounded(length, LONGEST_ASSOCIATE)));
            case PduType.ASSOCIATE_AC ->
                new Pdu.AssociateAccept(AssociateReader.accept(in(bounded(length, LONGEST_ASSOCIATE))));
            case PduType.ASSOCIATE_RJ -> reject(shortBody(length));
            case PduType.DATA -> new Pdu.Data(bounded(length, longestData));
            case PduType.RELEASE_RQ -> {
                shortBody(length);
                yield new Pdu.ReleaseRequest();
            }
            case PduType.RELEASE_RP -> {
                shortBody(length);
                yield new Pdu.ReleaseReply();
            }
            case PduType.ABORT -> abort(shortBody(length));
            default -> throw new InvalidPdu(Pdu.Abort.UNRECOGNISED_PDU, "A PDU has an unknown type.");
        };
    }

    private static Pdu request(byte[] body) throws InvalidPdu {
        return AssociateReader.speaksVersionOne(body)
                ? new Pdu.AssociateRequest(AssociateReader.request(body))
                : new Pdu.ForeignAssociateRequest();
    }

    private static Pdu reject(byte[] body) {
        return new Pdu.AssociateReject(Rejection.of(body[1], body[2], body[3]));
    }

    private static Pdu abort(byte[] body) {
        return new Pdu.Abort(body[2] & 0xff, body[3] & 0xff);
    }

    private byte[] shortBody(long length) throws IOException {
        if (length != SHORT_PDU_BYTES) {
            throw new InvalidPdu("A PDU of fixed length has another one.");
        }
        return in(SHORT_PDU_BYTES);
    }

    private static int bounded(long length, int longest) throws InvalidPdu {
        if (length > longest) {
            throw new InvalidPdu("A PDU states a length of " + length + " bytes; at most " + longest + " are taken.");
        }
        return (int) length;
    }

    private byte[] in(int count) throws IOException {
        byte[] bytes = new byte[count];
        read(bytes, 0, count);
        return bytes;
    }

    /** Reads exactly so many bytes of the PDU that was last begun. */
    void read(byte[] into, int offset, int count) throws IOException {
        int done = 0;
        while (done < count) {
            long left = TimeUnit.NANOSECONDS.toMillis(deadline - System.nanoTime());
            if (left <= 0) {
                throw new SocketTimeoutException("The peer is too slow.");
            }
            socket.setSoTimeout((int) Math.min(left, Integer.MAX_VALUE));
            int got = in.read(into, offset + done, count - done);
            if (got < 0) {
                throw new EOFException("The peer closed the connection.");
            }
            done += got;
        }
    }

    /** Whether a byte or the end has come, or comes within the wait; it is left where it is. */
    boolean isSpokenTo(Duration wait) throws IOException {
        if (!in.markSupported()) {
            return true; // whoever reads next finds out
        }
        socket.setSoTimeout((int) Math.max(1, wait.toMillis()));
        in.mark(1);
        try {
            in.read();
            return true;
        } catch (SocketTimeoutException e) {
            return false;
        } finally {
            in.reset();
        }
    }

    /** Sends whole PDUs; the connection is closed when the peer takes them too slowly. */
    void write(byte[] bytes, int count) throws IOException {
        ScheduledFuture<?> end = closeAfter(socket, patience);
        try {
            out.write(bytes, 0, count);
            out.flush();
        } finally {
            end.cancel(false);
        }
    }

    void write(byte[] pdu) throws IOException {
        write(pdu, pdu.length);
    }

    /** Reads and drops what still comes, until the peer closes or the time is over; true when the peer closed. */
    boolean awaitClose(Duration artim) {
        deadline = System.nanoTime() + artim.toNanos();
        byte[] scrap = new byte[BUFFER_BYTES];
        try {
            while (true) {
                read(scrap, 0, 1);
            }
        } catch (SocketTimeoutException e) {
            return false;
        } catch (IOException e) {
            return true;
        }
    }

    Socket socket() {
        return socket;
    }

    /** Somebody else closes the socket from now on, and nothing is read here any more. */
    void handOver() {
        handedOver = true;
    }

    @Override
    public void close() {
        if (!handedOver) {
            closeQuietly(socket);
        }
    }

    /** A socket that cannot even be closed holds nothing back. */
    static void closeQuietly(Socket socket) {
        try {
            socket.close();
        } catch (IOException e) {
            LOG.debug("A socket could not be closed: {}", e.getMessage());
        }
    }
}
