// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The few values of the outermost data set that decide whether the file holds together. */
final class KeyAttributes {
    private static final Set<Integer> UIDS =
            Set.of(Tag.SOP_CLASS_UID, Tag.SOP_INSTANCE_UID, Tag.STUDY_INSTANCE_UID, Tag.SERIES_INSTANCE_UID);
    private static final Set<Integer> NUMBERS =
            Set.of(Tag.SAMPLES_PER_PIXEL, Tag.ROWS, Tag.COLUMNS, Tag.BITS_ALLOCATED);
    private static final int LONGEST_UID = 64;
    private static final int LONGEST_CODE = 16;
    private static final int LONGEST_INTEGER = 12;

    private final boolean bigEndian;
    private final Map<Integer, String> texts = new HashMap<>();
    private final Map<Integer, Integer> numbers = new HashMap<>();

    KeyAttributes(boolean bigEndian) {
        this.bigEndian = bigEndian;
    }

    /** Takes the value if it is one of the key attributes; the caller puts the window behind it in any case. */
    void look(ByteWindow in, ElementHeader header) throws IOException {
        int tag = header.tag();
        if (UIDS.contains(tag)) {
            texts.put(tag, uid(in, header));
        } else if (NUMBERS.contains(tag)) {
            if (header.length() != 2) {
                throw Fault.malformed(tag, header.offset(), "is not one number of 2 bytes");
            }
            numbers.put(tag, in.u16(bigEndian));
        } else if (tag == Tag.NUMBER_OF_FRAMES) {
            numbers.put(tag, frames(text(in, header, LONGEST_INTEGER), header));
        } else if (tag == Tag.PHOTOMETRIC_INTERPRETATION) {
            texts.put(tag, text(in, header, LONGEST_CODE));
        }
    }

    Optional<String> text(int tag) {
        return Optional.ofNullable(texts.get(tag)).filter(text -> !text.isEmpty());
    }

    /** Reads a unique identifier and refuses whatever is not one. */
    static String uid(ByteWindow in, ElementHeader header) throws IOException {
        String uid = text(in, header, LONGEST_UID);
        if (!uid.isEmpty() && !UidSyntax.holds(uid)) {
            throw Fault.malformed(header.tag(), header.offset(), "is not a unique identifier");
        }
        return uid;
    }

    private static String text(ByteWindow in, ElementHeader header, int longest) throws IOException {
        if (header.length() > longest) {
            throw Fault.malformed(
                    header.tag(),
                    header.offset(),
                    "has " + header.length() + " bytes; at most " + longest + " may stand");
        }
        String padded = new String(in.bytes((int) header.length()), StandardCharsets.ISO_8859_1);
        String text = padded.endsWith("\0") ? padded.substring(0, padded.length() - 1) : padded;
        return text.strip();
    }

    private static int frames(String text, ElementHeader header) {
        try {
            return text.isEmpty() ? 1 : Integer.parseInt(text);
        } catch (NumberFormatException e) {
            throw Fault.malformed(header.tag(), header.offset(), "is not a whole number");
        }
    }

    /** Shape of the pixels as stated, within the limits. */
    PixelShape shape(ElementHeader pixels) {
        PixelShape shape = new PixelShape(
                side(Tag.ROWS, pixels),
                side(Tag.COLUMNS, pixels),
                number(Tag.SAMPLES_PER_PIXEL, pixels),
                number(Tag.BITS_ALLOCATED, pixels),
                numbers.getOrDefault(Tag.NUMBER_OF_FRAMES, 1),
                text(Tag.PHOTOMETRIC_INTERPRETATION)
                        .orElseThrow(() -> missing(Tag.PHOTOMETRIC_INTERPRETATION, pixels)));
        if (shape.frames() < 1) {
            throw Fault.malformed(Fault.name(Tag.NUMBER_OF_FRAMES) + " is below 1");
        }
        if (shape.frames() > PixelShape.MAX_FRAMES) {
            throw tooLarge(Tag.NUMBER_OF_FRAMES, shape.frames(), PixelShape.MAX_FRAMES);
        }
        return shape;
    }

    private int side(int tag, ElementHeader pixels) {
        int side = number(tag, pixels);
        if (side > PixelShape.MAX_SIDE) {
            throw tooLarge(tag, side, PixelShape.MAX_SIDE);
        }
        return side;
    }

    private int number(int tag, ElementHeader pixels) {
        Integer number = numbers.get(tag);
        if (number == null) {
            throw missing(tag, pixels);
        }
        if (number < 1) {
            throw Fault.malformed(Fault.name(tag) + " is 0");
        }
        return number;
    }

    private static RuntimeException missing(int tag, ElementHeader pixels) {
        return Fault.malformed(
                Fault.place(pixels.tag(), pixels.offset()) + " stands without " + Fault.name(tag) + " before it");
    }

    private static RuntimeException tooLarge(int tag, int stated, int limit) {
        return Fault.unsupported(
                Fault.name(tag) + " is " + stated + "; at most " + limit + " is taken", "Send a smaller object.");
    }
}
