// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.io.IOException;

/** The chain of fragments of encapsulated pixel data: offset table, fragments, delimiter. Source: DICOM PS3.5, A.4. */
final class FragmentGate {
    private static final int MAX_FRAGMENTS = 200_000;
    private static final int ITEM_HEADER = 8;
    private static final int START_OF_JPEG = 0xffd8;
    private static final int START_OF_JPEG_2000 = 0xff4f;

    private final ByteWindow in;
    private final ElementHeader pixels;
    private final Fragments fragments = new Fragments();

    private FragmentGate(ByteWindow in, ElementHeader pixels) {
        this.in = in;
        this.pixels = pixels;
    }

    /** Leaves the window behind the delimiter. */
    static Fragments read(ByteWindow in, ElementHeader pixels, PixelShape shape) throws IOException {
        return new FragmentGate(in, pixels).run(shape.frames());
    }

    private Fragments run(int frames) throws IOException {
        long[] table = offsetTable();
        for (long length = item(); length != ElementHeader.UNDEFINED; length = item()) {
            fragment(length);
        }
        if (!fragments.share(frames, table)) {
            throw Fault.malformed(
                    pixels.tag(),
                    pixels.offset(),
                    "has " + fragments.count() + " fragments, which do not make up the stated " + frames + " frames");
        }
        return fragments;
    }

    private long[] offsetTable() throws IOException {
        long length = item();
        if (length == ElementHeader.UNDEFINED || length % 4 != 0 || length / 4 > PixelShape.MAX_FRAMES) {
            throw fault("has no proper offset table");
        }
        long[] table = new long[(int) (length / 4)];
        for (int i = 0; i < table.length; i++) {
            table[i] = in.u32(false);
        }
        return table;
    }

    /** Length of the next fragment, or {@link ElementHeader#UNDEFINED} at the end of the chain. */
    private long item() throws IOException {
        if (in.size() - in.position() < ITEM_HEADER) {
            throw fault("ends without a delimiter");
        }
        int tag = in.tag(false);
        long length = in.u32(false);
        if (tag == Gate.SEQUENCE_DELIMITER && length == 0) {
            return ElementHeader.UNDEFINED;
        }
        if (tag != Gate.ITEM || length % 2 != 0 || length > in.size() - in.position()) {
            throw fault("has a broken or cut off fragment at byte " + (in.position() - ITEM_HEADER));
        }
        return length;
    }

    private void fragment(long length) throws IOException {
        long offset = in.position();
        if (length < 2 || fragments.count() == MAX_FRAGMENTS) {
            throw fault("has an empty fragment at byte " + offset + ", or more than " + MAX_FRAGMENTS + " fragments");
        }
        int start = in.u16(true);
        // distances in the offset table count from item to item, so the place of an item's value serves as well
        fragments.add(offset, length, start == START_OF_JPEG || start == START_OF_JPEG_2000);
        in.seek(offset + length);
    }

    private RuntimeException fault(String what) {
        return Fault.malformed(pixels.tag(), pixels.offset(), what);
    }
}
