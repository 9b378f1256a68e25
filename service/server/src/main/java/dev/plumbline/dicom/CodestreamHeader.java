// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.nio.ByteBuffer;
import java.util.Optional;

/**
 * What a compressed frame says about itself, read before a decoder may allocate by it. Source: ISO/IEC 10918-1, B.2.2
 * (frame header); ISO/IEC 14495-1, C.2.2; ISO/IEC 15444-1, A.5.1 (SIZ).
 *
 * @param precision bits per sample
 */
record CodestreamHeader(int columns, int rows, int components, int precision) {
    private static final int MARKER = 0xff;
    private static final int START = 0xd8;
    private static final int START_JPEG_2000 = 0xff4f;
    private static final int SIZ = 0xff51;
    private static final int SIZ_LENGTH = 44;
    private static final int JPEG_LS_FRAME = 0xf7;

    /** Of a JPEG, JPEG-LS or JPEG 2000 image; empty where there is none. */
    static Optional<CodestreamHeader> of(byte[] frame) {
        ByteBuffer in = ByteBuffer.wrap(frame);
        if (Jpeg2000Boxes.areIn(frame)) {
            int start = Jpeg2000Boxes.codestream(frame);
            return start < 0 ? Optional.empty() : jpeg2000(in.position(start).slice());
        }
        if (in.remaining() < 4) {
            return Optional.empty();
        }
        return (in.getShort(0) & 0xffff) == START_JPEG_2000 ? jpeg2000(in) : jpeg(in);
    }

    private static Optional<CodestreamHeader> jpeg2000(ByteBuffer in) {
        if (in.remaining() < SIZ_LENGTH || (in.getShort(2) & 0xffff) != SIZ) {
            return Optional.empty();
        }
        long columns = (in.getInt(8) & 0xffffffffL) - (in.getInt(16) & 0xffffffffL);
        long rows = (in.getInt(12) & 0xffffffffL) - (in.getInt(20) & 0xffffffffL);
        if (columns < 1 || rows < 1 || columns > PixelShape.MAX_SIDE || rows > PixelShape.MAX_SIDE) {
            return Optional.empty();
        }
        int components = in.getShort(40) & 0xffff;
        return Optional.of(new CodestreamHeader((int) columns, (int) rows, components, (in.get(42) & 0x7f) + 1));
    }

    private static Optional<CodestreamHeader> jpeg(ByteBuffer in) {
        if ((in.get() & 0xff) != MARKER || (in.get() & 0xff) != START) {
            return Optional.empty();
        }
        while (in.remaining() >= 10 && (in.get() & 0xff) == MARKER) {
            int marker = in.get() & 0xff;
            if (marker == MARKER) {
                in.position(in.position() - 1);
                continue;
            }
            int segment = in.position();
            if (isFrame(marker)) {
                return Optional.of(new CodestreamHeader(
                        in.getShort(segment + 5) & 0xffff,
                        in.getShort(segment + 3) & 0xffff,
                        in.get(segment + 7) & 0xff,
                        in.get(segment + 2) & 0xff));
            }
            int next = segment + (in.getShort(segment) & 0xffff);
            if (next <= segment + 1 || next > in.limit()) {
                return Optional.empty();
            }
            in.position(next);
        }
        return Optional.empty();
    }

    /** C0 to CF but for the tables C4 and CC and the reserved C8. */
    private static boolean isFrame(int marker) {
        boolean table = marker == 0xc4 || marker == 0xc8 || marker == 0xcc;
        return marker == JPEG_LS_FRAME || (0xc0 <= marker && marker <= 0xcf && !table);
    }
}
