// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;

/** A stream of bytes as lines. Of a line that is longer than the limit one byte too many is kept, so that it shows. */
final class LineReader {
    private static final int BUFFER_BYTES = 1 << 16;

    private final InputStream in;
    private final int limit;
    private final byte[] buffer = new byte[BUFFER_BYTES];
    private int next;
    private int end;
    private long number;

    LineReader(InputStream in, int limit) {
        this.in = in;
        this.limit = limit;
    }

    /**
     * A line without its end.
     *
     * @param number from 1
     */
    @SuppressWarnings("ArrayRecordComponent") // handed from one thread to the next, never compared
    record Line(long number, byte[] bytes) {
        boolean isBlank() {
            for (byte b : bytes) {
                if (b != ' ' && b != '\t' && b != '\r') {
                    return false;
                }
            }
            return true;
        }
    }

    /** The next line; empty at the end. The last line needs no line end. */
    Optional<Line> next() throws IOException {
        ByteArrayOutputStream rest = new ByteArrayOutputStream(0);
        boolean any = false;
        while (true) {
            if (next == end) {
                end = in.read(buffer, 0, buffer.length);
                next = 0;
                if (end < 0) {
                    end = 0;
                    return any ? Optional.of(line(rest.toByteArray())) : Optional.empty();
                }
            }
            any = true;
            int stop = lineEnd();
            int room = Math.min(stop - next, limit + 1 - rest.size());
            rest.write(buffer, next, room);
            boolean ended = stop < end;
            next = ended ? stop + 1 : stop;
            if (ended) {
                return Optional.of(line(rest.toByteArray()));
            }
        }
    }

    private int lineEnd() {
        int i = next;
        while (i < end && buffer[i] != '\n') {
            i++;
        }
        return i;
    }

    private Line line(byte[] bytes) {
        return new Line(++number, bytes);
    }

    /** Whether asking for the next line may have to wait for whoever writes. */
    boolean mayWait() throws IOException {
        return next == end && in.available() == 0;
    }
}
