// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dicom.Implementation;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * The front of a DICOM file, which goes over no association: put before what arrives, stepped over in what is sent. Source:
 * DICOM PS3.10, 7.1.
 */
final class FileMeta {
    private static final int PREAMBLE_BYTES = 128;
    private static final int FRONT_BYTES = PREAMBLE_BYTES + 16;
    private static final int GROUP_LENGTH_OFFSET = PREAMBLE_BYTES + 12;

    private FileMeta() {}

    /**
     * Preamble, prefix and meta information of an object that arrives; a function of the object alone, so that the same
     * object gives the same file whoever sends it.
     */
    static byte[] of(Services.Incoming object) {
        ByteArrayOutputStream elements = new ByteArrayOutputStream();
        elements.writeBytes(new byte[] {2, 0, 1, 0, 'O', 'B', 0, 0, 2, 0, 0, 0, 0, 1});
        put(elements, 0x0002, "UI", object.sopClassUid());
        put(elements, 0x0003, "UI", object.sopInstanceUid());
        put(elements, 0x0010, "UI", object.transferSyntaxUid());
        put(elements, 0x0012, "UI", Implementation.CLASS_UID);
        put(elements, 0x0013, "SH", Implementation.VERSION_NAME);
        return ByteBuffer.allocate(FRONT_BYTES + elements.size())
                .order(ByteOrder.LITTLE_ENDIAN)
                .position(PREAMBLE_BYTES)
                .put(new byte[] {'D', 'I', 'C', 'M', 2, 0, 0, 0, 'U', 'L', 4, 0})
                .putInt(elements.size())
                .put(elements.toByteArray())
                .array();
    }

    private static void put(ByteArrayOutputStream out, int element, String vr, String text) {
        byte[] value = text.getBytes(StandardCharsets.US_ASCII);
        int padded = value.length + value.length % 2;
        ByteBuffer bytes = ByteBuffer.allocate(8 + padded).order(ByteOrder.LITTLE_ENDIAN);
        bytes.putShort((short) 2).putShort((short) element).put(vr.getBytes(StandardCharsets.US_ASCII));
        bytes.putShort((short) padded).put(value);
        if (value.length < padded && vr.equals("SH")) {
            bytes.put((byte) ' ');
        }
        out.writeBytes(bytes.array());
    }

    /** Leaves the stream of a whole file at the first byte of its data set. */
    static void skip(InputStream file) throws IOException {
        byte[] front = file.readNBytes(FRONT_BYTES);
        if (front.length < FRONT_BYTES) {
            throw new EOFException("The file is too short for a DICOM file.");
        }
        int length = ByteBuffer.wrap(front).order(ByteOrder.LITTLE_ENDIAN).getInt(GROUP_LENGTH_OFFSET);
        file.skipNBytes(length);
    }
}
