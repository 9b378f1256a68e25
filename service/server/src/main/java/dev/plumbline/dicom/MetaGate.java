// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * The front of a DICOM file: preamble, prefix and file meta information. Source: DICOM PS3.10, 7.1. The preamble may hold
 * anything and the version of the meta information is no reason to refuse.
 */
final class MetaGate {
    private static final int PREAMBLE = 128;
    private static final byte[] PREFIX = "DICM".getBytes(StandardCharsets.US_ASCII);
    private static final int SMALLEST_FILE = 144;
    private static final int LONGEST_META = 1 << 20;
    private static final int META_GROUP = 2;
    private static final int HEADER = 8;

    /** What the meta information says. */
    record Meta(TransferSyntax transferSyntax, String sopClassUid, String sopInstanceUid, int elements) {}

    private final ByteWindow in;
    private final PlacedItem placed;
    private final Map<Integer, String> uids = new HashMap<>();
    private int elements;

    private MetaGate(ByteWindow in, PlacedItem placed) {
        this.in = in;
        this.placed = placed;
    }

    /**
     * Leaves the window at the first byte of the data set.
     *
     * @param placed is told where each attribute stands
     */
    static Meta read(ByteWindow in, PlacedItem placed) throws IOException {
        return new MetaGate(in, placed).run();
    }

    private Meta run() throws IOException {
        in.seek(PREAMBLE);
        if (in.size() < SMALLEST_FILE || !Arrays.equals(in.bytes(PREFIX.length), PREFIX)) {
            throw Fault.malformed("This is not a DICOM file: the letters DICM are not at byte 128");
        }
        long end = end();
        int last = Tag.FILE_META_INFORMATION_GROUP_LENGTH;
        while (in.position() < end) {
            last = element(last, end);
        }
        String syntax = uid(Tag.TRANSFER_SYNTAX_UID);
        return new Meta(
                TransferSyntax.of(syntax).orElseThrow(() -> RefusedSyntax.refusal(syntax)),
                uid(Tag.MEDIA_STORAGE_SOP_CLASS_UID),
                uid(Tag.MEDIA_STORAGE_SOP_INSTANCE_UID),
                elements);
    }

    private long end() throws IOException {
        long offset = in.position();
        int tag = in.tag(false);
        if (tag != Tag.FILE_META_INFORMATION_GROUP_LENGTH) {
            throw Fault.malformed(Tag.FILE_META_INFORMATION_GROUP_LENGTH, offset, "is missing");
        }
        ElementHeader header = ElementHeader.readExplicit(in, tag, false);
        if (!header.vr().equals("UL") || header.length() != 4) {
            throw Fault.malformed(tag, offset, "is not one number of 4 bytes");
        }
        elements++;
        placed.add(header, in.position());
        long length = in.u32(false);
        if (length > LONGEST_META || in.position() + length > in.size()) {
            throw Fault.malformed(tag, offset, "says " + length + " bytes, more than there can be");
        }
        return in.position() + length;
    }

    private int element(int last, long end) throws IOException {
        long offset = in.position();
        if (end - offset < HEADER) {
            throw Fault.malformed(last, offset, "is followed by the middle of an element where the group should end");
        }
        int tag = in.tag(false);
        if (tag >>> 16 != META_GROUP || tag <= last) {
            throw Fault.malformed(tag, offset, "is out of order in the file meta information");
        }
        ElementHeader header = ElementHeader.readExplicit(in, tag, false);
        if (header.isUndefined() || header.vr().equals("SQ") || header.length() > end - in.position()) {
            throw Fault.malformed(tag, offset, "reaches beyond the file meta information");
        }
        elements++;
        placed.add(header, in.position());
        long next = in.position() + header.length();
        if (header.vr().equals("UI")) {
            uids.put(tag, KeyAttributes.uid(in, header));
        }
        in.seek(next);
        return tag;
    }

    private String uid(int tag) {
        String uid = uids.get(tag);
        if (uid == null || uid.isEmpty()) {
            throw Fault.malformed(Fault.name(tag) + " is missing from the file meta information");
        }
        return uid;
    }
}
