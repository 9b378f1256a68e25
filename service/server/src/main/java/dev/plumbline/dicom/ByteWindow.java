// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * A file read forward through a window of fixed size; values that nobody asks for are stepped over, never loaded. A small
 * file is in the window as a whole.
 */
final class ByteWindow implements Closeable {
    private static final int WINDOW = 1 << 16;
    private static final int SMALL_FILE = 1 << 20;

    private final FileChannel channel;
    private final long size;
    private final ByteBuffer buffer;
    private long windowStart;

    private ByteWindow(FileChannel channel, long size) {
        this.channel = channel;
        this.size = size;
        buffer = ByteBuffer.allocate(size <= SMALL_FILE ? (int) size : WINDOW).limit(0);
    }

    static ByteWindow open(Path file) throws IOException {
        FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
        ByteWindow window = new ByteWindow(channel, channel.size());
        if (window.size <= SMALL_FILE) {
            window.need((int) window.size);
        }
        return window;
    }

    /** The bytes of a small file, not a copy; empty for a larger one. */
    Optional<byte[]> whole() {
        return size <= SMALL_FILE ? Optional.of(buffer.array()) : Optional.empty();
    }

    long size() {
        return size;
    }

    long position() {
        return windowStart + buffer.position();
    }

    void seek(long position) {
        if (windowStart <= position && position <= windowStart + buffer.limit()) {
            buffer.position((int) (position - windowStart));
        } else {
            windowStart = position;
            buffer.position(0).limit(0);
        }
    }

    int u8() throws IOException {
        need(1);
        return buffer.get() & 0xff;
    }

    int u16(boolean bigEndian) throws IOException {
        int first = u8();
        int second = u8();
        return bigEndian ? first << 8 | second : second << 8 | first;
    }

    long u32(boolean bigEndian) throws IOException {
        long first = u16(bigEndian);
        long second = u16(bigEndian);
        return bigEndian ? first << 16 | second : second << 16 | first;
    }

    /** A tag as one number, group in the upper half. */
    int tag(boolean bigEndian) throws IOException {
        int group = u16(bigEndian);
        return group << 16 | u16(bigEndian);
    }

    /** A few bytes; the caller has compared the count with a limit of its own. */
    byte[] bytes(int count) throws IOException {
        byte[] bytes = new byte[count];
        for (int i = 0; i < count; i++) {
            bytes[i] = (byte) u8();
        }
        return bytes;
    }

    private void need(int count) throws IOException {
        if (buffer.remaining() >= count) {
            return;
        }
        windowStart += buffer.position();
        buffer.clear();
        while (buffer.position() < count) {
            if (channel.read(buffer, windowStart + buffer.position()) < 0) {
                throw new EOFException("The file ends at byte " + (windowStart + buffer.position()) + ".");
            }
        }
        buffer.flip();
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
