// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.nio.ByteBuffer;

/**
 * The boxes of a JP2 file, which some writers put round the codestream although DICOM forbids it. Source: ISO/IEC 15444-1,
 * I.4 and I.5.1; DICOM PS3.5, A.4.4.
 */
final class Jpeg2000Boxes {
    private static final int SIGNATURE = 0x6a502020;
    private static final int CODESTREAM = 0x6a703263;
    private static final int HEADER = 8;

    private Jpeg2000Boxes() {}

    static boolean areIn(byte[] frame) {
        return frame.length > HEADER && ByteBuffer.wrap(frame).getInt(4) == SIGNATURE;
    }

    /** Where the codestream begins; -1 if there is none. */
    static int codestream(byte[] frame) {
        ByteBuffer in = ByteBuffer.wrap(frame);
        long at = 0;
        while (at + HEADER <= frame.length) {
            long length = in.getInt((int) at) & 0xffffffffL;
            if (in.getInt((int) at + 4) == CODESTREAM) {
                return (int) at + HEADER;
            }
            if (length < HEADER) {
                return -1;
            }
            at += length;
        }
        return -1;
    }
}
