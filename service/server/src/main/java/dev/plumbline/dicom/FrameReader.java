// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Reads one frame out of a file by its place, whatever the size of the file. */
final class FrameReader {
    private static final int LONGEST_FRAME = 1 << 30;

    private final Path file;
    private final TransferSyntax syntax;
    private final ImageDescription description;

    FrameReader(Path file, TransferSyntax syntax, ImageDescription description) {
        this.file = file;
        this.syntax = syntax;
        this.description = description;
    }

    /** @param frame from 0 */
    Samples read(PixelBytes pixels, int frame) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            if (pixels instanceof PixelBytes.Plain plain) {
                return new PlainDecoder(description, plain.swapped(), syntax.bigEndian())
                        .decode(plainBytes(channel, plain, frame));
            }
            Fragments fragments = ((PixelBytes.Encapsulated) pixels).fragments();
            return new CompressedDecoder(syntax, description).decode(frameBytes(channel, fragments, frame));
        }
    }

    /**
     * The bytes of a frame: compressed as they are, plain in little-endian order.
     *
     * @param frame from 0
     */
    byte[] stored(PixelBytes pixels, int frame) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            if (pixels instanceof PixelBytes.Plain plain) {
                if (plain.shape().bitsAllocated() % Byte.SIZE != 0) {
                    throw Fault.unsupported("Frames do not begin at whole bytes", "Retrieve the whole object.");
                }
                byte[] bytes = plainBytes(channel, plain, frame);
                return plain.swapped() || (syntax.bigEndian() && plain.shape().bitsAllocated() > Byte.SIZE)
                        ? swappedPairs(bytes)
                        : bytes;
            }
            return frameBytes(channel, ((PixelBytes.Encapsulated) pixels).fragments(), frame);
        }
    }

    /** Pixel data are bytes or 16-bit words: in big-endian words two bytes change places. */
    private static byte[] swappedPairs(byte[] bytes) {
        byte[] swapped = new byte[bytes.length];
        for (int i = 0; i + 1 < bytes.length; i += 2) {
            swapped[i] = bytes[i + 1];
            swapped[i + 1] = bytes[i];
        }
        return swapped;
    }

    private static byte[] plainBytes(FileChannel channel, PixelBytes.Plain plain, int frame) throws IOException {
        long length = plain.shape().frameLength();
        if (plain.swapped() && length % 2 != 0) {
            throw Fault.unsupported(
                    "Frames have an odd number of bytes in 16-bit big-endian words",
                    "Send it in a little-endian syntax.");
        }
        ByteBuffer bytes = ByteBuffer.allocate(bounded(length));
        fill(channel, bytes, plain.offset() + Math.multiplyExact(length, (long) frame));
        return bytes.array();
    }

    private static byte[] frameBytes(FileChannel channel, Fragments fragments, int frame) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(bounded(fragments.frameLength(frame)));
        for (int fragment = fragments.firstOf(frame); fragment < fragments.firstOf(frame + 1); fragment++) {
            int end = bytes.position() + (int) fragments.length(fragment);
            fill(channel, bytes.limit(end), fragments.offset(fragment));
        }
        return bytes.array();
    }

    private static int bounded(long length) {
        if (length > LONGEST_FRAME) {
            throw Fault.unsupported("One frame has " + length + " bytes", "Send a smaller object.");
        }
        return (int) length;
    }

    private static void fill(FileChannel channel, ByteBuffer bytes, long offset) throws IOException {
        long position = offset;
        while (bytes.hasRemaining()) {
            int read = channel.read(bytes, position);
            if (read < 0) {
                throw new EOFException("The file has become shorter while a frame was read.");
            }
            position += read;
        }
    }
}
