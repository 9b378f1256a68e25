// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * The strict gate: one pass over a file that lets through only whole, well-formed objects in a known encoding, because the
 * toolkit takes broken ones for good. Nothing is allocated by a length that the file states, and nothing recurses.
 *
 * <p>Rules are those of DICOM PS3.5 (7.1 data elements, 7.5 nesting, A.4 encapsulation) and PS3.10 (7.1 meta
 * information); the limits are design choices.
 */
final class Gate {
    static final int ITEM = 0xfffee000;
    static final int ITEM_DELIMITER = 0xfffee00d;
    static final int SEQUENCE_DELIMITER = 0xfffee0dd;
    static final int MAX_DEPTH = 32;
    static final int MAX_ELEMENTS = 100_000;
    static final int MAX_ITEMS = 20_000;
    static final long MAX_BESIDE_PIXELS = 64L << 20;
    static final String OTHER_THAN_STATED = " is missing or differs from the one in the file meta information";
    private static final int HEADER = 8;
    private static final int DELIMITER_GROUP = 0xfffe;
    private static final int LAST_FORBIDDEN_GROUP = 0x0003;

    private final ByteWindow in;
    private final PlacedObject placed;
    private final MetaGate.Meta meta;
    private final KeyAttributes keys;
    private final Deque<Level> levels = new ArrayDeque<>();
    private int depth;
    private int elements;
    private int items;
    private int counted;
    private long besidePixels;
    private Optional<PixelBytes> pixels = Optional.empty();
    private long behindPixels;

    /**
     * A data set, a sequence or an item that is being read.
     *
     * @param end where it ends, or where the enclosing one ends if its own length is undefined
     * @param item itself, or of a sequence the one that holds it
     */
    private record Level(
            Kind kind,
            ElementHeader sequence,
            long end,
            boolean undefined,
            boolean implicit,
            boolean inPrivate,
            PlacedItem item) {
        enum Kind {
            DATA_SET,
            SEQUENCE,
            ITEM
        }
    }

    private Gate(ByteWindow in) throws IOException {
        this.in = in;
        placed = new PlacedObject(in.whole());
        meta = MetaGate.read(in, placed.root());
        keys = new KeyAttributes(meta.transferSyntax().bigEndian());
        counted = meta.elements();
        behindPixels = in.size();
    }

    /**
     * Reads the whole structure of a file.
     *
     * @throws Refusal if the file is not whole, not well-formed or of a kind that is not taken
     */
    static GateReport inspect(Path file) throws IOException {
        try (ByteWindow in = ByteWindow.open(file)) {
            return new Gate(in).run();
        }
    }

    private GateReport run() throws IOException {
        ElementHeader whole = new ElementHeader(0, "SQ", in.size(), in.position());
        levels.push(new Level(
                Level.Kind.DATA_SET,
                whole,
                in.size(),
                false,
                meta.transferSyntax().implicit(),
                false,
                placed.root()));
        int[] last = new int[MAX_DEPTH + 1];
        walk(last);
        same(Tag.SOP_CLASS_UID, meta.sopClassUid());
        same(Tag.SOP_INSTANCE_UID, meta.sopInstanceUid());
        return new GateReport(
                meta.transferSyntax(),
                meta.sopClassUid(),
                meta.sopInstanceUid(),
                counted,
                pixels,
                behindPixels,
                whole());
    }

    private Optional<PlacedObject> whole() {
        return meta.transferSyntax() == TransferSyntax.EXPLICIT_LITTLE_ENDIAN && pixels.isEmpty()
                ? placed.built()
                : Optional.empty();
    }

    /** @param last the last tag seen in the innermost open item of each depth */
    private void walk(int[] last) throws IOException {
        while (!levels.isEmpty()) {
            Level level = levels.element();
            long offset = in.position();
            if (!level.undefined() && offset == level.end()) {
                leave();
            } else if (level.end() - offset < HEADER) {
                throw cutOff(level, offset);
            } else if (level.kind() == Level.Kind.SEQUENCE) {
                last[depth] = 0;
                item(level);
            } else {
                last[depth] = element(level, last[depth]);
            }
        }
    }

    private static Refusal cutOff(Level level, long offset) {
        return level.kind() == Level.Kind.DATA_SET
                ? Fault.malformed("The file ends at byte " + level.end() + " in the middle of an element")
                : Fault.malformed(
                        level.sequence().tag(),
                        level.sequence().offset(),
                        "has no proper end; it was read to byte " + offset);
    }

    private void leave() {
        if (levels.remove().kind() == Level.Kind.SEQUENCE) {
            depth--;
        }
    }

    private void item(Level sequence) throws IOException {
        long offset = in.position();
        int tag = in.tag(bigEndian(sequence));
        long length = in.u32(bigEndian(sequence));
        if (tag == SEQUENCE_DELIMITER && sequence.undefined() && length == 0) {
            leave();
            return;
        }
        ElementHeader header = sequence.sequence();
        if (tag != ITEM) {
            throw Fault.malformed(
                    header.tag(), header.offset(), "holds something that is not an item at byte " + offset);
        }
        if (++items > MAX_ITEMS) {
            throw tooMany("items", MAX_ITEMS);
        }
        levels.push(new Level(
                Level.Kind.ITEM,
                header,
                end(length, sequence, header),
                length == ElementHeader.UNDEFINED,
                sequence.implicit(),
                sequence.inPrivate(),
                sequence.item().newItem()));
    }

    private long end(long length, Level enclosing, ElementHeader header) {
        if (length == ElementHeader.UNDEFINED) {
            return enclosing.end();
        }
        if (length > enclosing.end() - in.position()) {
            throw Fault.malformed(
                    header.tag(),
                    header.offset(),
                    "needs " + length + " bytes where " + (enclosing.end() - in.position()) + " are left");
        }
        return in.position() + length;
    }

    private int element(Level level, int last) throws IOException {
        long offset = in.position();
        int tag = in.tag(bigEndian(level));
        if (tag >>> 16 == DELIMITER_GROUP) {
            delimiter(level, tag, offset);
            return last;
        }
        if (Integer.compareUnsigned(tag, last) <= 0 || (tag >>> 16) <= LAST_FORBIDDEN_GROUP) {
            throw Fault.malformed(tag, offset, "stands twice or out of order");
        }
        if (++elements > MAX_ELEMENTS) {
            throw tooMany("attributes", MAX_ELEMENTS);
        }
        ElementHeader header = level.implicit()
                ? ElementHeader.readImplicit(in, tag)
                : ElementHeader.readExplicit(in, tag, bigEndian(level));
        value(level, header);
        return tag;
    }

    private void delimiter(Level level, int tag, long offset) throws IOException {
        if (tag != ITEM_DELIMITER || level.kind() != Level.Kind.ITEM || !level.undefined()) {
            throw Fault.malformed(tag, offset, "is a delimiter where none can be");
        }
        if (in.u32(bigEndian(level)) != 0) {
            throw Fault.malformed(tag, offset, "is a delimiter with a length");
        }
        leave();
    }

    private void value(Level level, ElementHeader header) throws IOException {
        boolean outermost = level.kind() == Level.Kind.DATA_SET;
        if (header.tag() == Tag.PIXEL_DATA && outermost) {
            pixelData(header, level);
            behindPixels = in.position();
            return;
        }
        if (pixels.isEmpty() && !level.inPrivate()) {
            counted++;
        }
        level.item().add(header, in.position());
        if (isSequence(level, header)) {
            sequence(level, header);
            return;
        }
        if (header.isUndefined()) {
            throw Fault.malformed(header.tag(), header.offset(), "has no length, and is not a sequence");
        }
        long end = end(header.length(), level, header);
        besidePixels += header.length();
        if (besidePixels > MAX_BESIDE_PIXELS) {
            throw tooMany("bytes beside the pixel data", MAX_BESIDE_PIXELS);
        }
        if (outermost) {
            keys.look(in, header);
        }
        in.seek(end);
    }

    private static boolean isSequence(Level level, ElementHeader header) {
        boolean undefined = header.isUndefined() && header.tag() != Tag.PIXEL_DATA;
        return header.vr().equals("SQ")
                || (undefined && (level.implicit() || header.vr().equals("UN")));
    }

    private void sequence(Level level, ElementHeader header) {
        if (++depth > MAX_DEPTH) {
            throw tooMany("levels of sequences", MAX_DEPTH);
        }
        // content of an undefined-length UN is always implicit little endian: PS3.5, 6.2.2 note 2
        boolean implicit = level.implicit() || header.vr().equals("UN");
        level.item().openSequence();
        levels.push(new Level(
                Level.Kind.SEQUENCE,
                header,
                end(header.length(), level, header),
                header.isUndefined(),
                implicit,
                level.inPrivate() || header.isPrivate(),
                level.item()));
    }

    private void pixelData(ElementHeader header, Level level) throws IOException {
        PixelShape shape = keys.shape(header);
        if (header.isUndefined() != meta.transferSyntax().encapsulated()) {
            throw Fault.malformed(
                    header.tag(),
                    header.offset(),
                    "is not encoded as " + meta.transferSyntax().title() + " demands");
        }
        if (header.isUndefined()) {
            pixels = Optional.of(new PixelBytes.Encapsulated(shape, FragmentGate.read(in, header, shape)));
            return;
        }
        boolean swapped = bigEndian(level) && header.vr().equals("OW");
        long end = end(header.length(), level, header);
        long expected = shape.nativeLength();
        if (header.length() != expected + expected % 2) {
            throw Fault.malformed(
                    header.tag(),
                    header.offset(),
                    "has " + header.length() + " bytes where the stated size and frames need " + expected);
        }
        pixels = Optional.of(new PixelBytes.Plain(shape, in.position(), swapped));
        in.seek(end);
    }

    private void same(int tag, String stated) {
        if (!keys.text(tag).equals(Optional.of(stated))) {
            throw Fault.malformed(Fault.name(tag) + OTHER_THAN_STATED);
        }
    }

    private boolean bigEndian(Level level) {
        return meta.transferSyntax().bigEndian() && !level.implicit();
    }

    private static Refusal tooMany(String what, long limit) {
        return Fault.unsupported("The object has more than " + limit + " " + what, "Send a smaller or simpler object.");
    }
}
