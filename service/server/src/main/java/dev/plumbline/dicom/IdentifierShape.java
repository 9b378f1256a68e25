// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.AttributeList;
import com.pixelmed.dicom.ValueRepresentation;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Whether a small data set is whole: every length lies within what encloses it, every sequence and item ends. The toolkit
 * takes broken data sets for good, allocates what a length says and recurses into items; so all of that is looked at first,
 * without allocating or recursing. Source: DICOM PS3.5, 7.1 and 7.5.
 */
final class IdentifierShape {
    private static final int MOST_ITEMS = 1_000;
    private static final int HEADER_BYTES = 8;
    private static final int DELIMITER_GROUP = 0xfffe;
    private static final long UNDEFINED = 0xffffffffL;

    private final ByteBuffer in;
    private final Deque<Level> levels = new ArrayDeque<>();
    private int items;

    /**
     * A data set, a sequence or an item.
     *
     * @param end where it ends, or at the latest where a delimiter must come
     */
    private record Level(Kind kind, int end, boolean undefined, boolean implicit) {
        enum Kind {
            DATA_SET,
            SEQUENCE,
            ITEM
        }
    }

    private IdentifierShape(byte[] bytes) {
        in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }

    /** @throws dev.plumbline.problem.Refusal when it is not whole and well formed */
    static void require(byte[] bytes, boolean implicit) {
        IdentifierShape shape = new IdentifierShape(bytes);
        shape.levels.push(new Level(Level.Kind.DATA_SET, bytes.length, false, implicit));
        shape.walk();
    }

    private void walk() {
        while (!levels.isEmpty()) {
            Level level = levels.element();
            if (!level.undefined() && in.position() == level.end()) {
                levels.pop();
                continue;
            }
            if (level.end() - in.position() < HEADER_BYTES) {
                throw Fault.malformed("The data set ends in the middle of an element");
            }
            int start = in.position();
            int tag = (in.getShort() << 16) | (in.getShort() & 0xffff);
            if (level.kind() == Level.Kind.SEQUENCE) {
                item(level, tag, start);
            } else if (tag >>> 16 == DELIMITER_GROUP) {
                delimiter(level, Level.Kind.ITEM, tag == Gate.ITEM_DELIMITER, start);
            } else {
                element(level, tag, start);
            }
        }
    }

    private void item(Level sequence, int tag, int start) {
        if (tag != Gate.ITEM) {
            delimiter(sequence, Level.Kind.SEQUENCE, tag == Gate.SEQUENCE_DELIMITER, start);
            return;
        }
        if (++items > MOST_ITEMS) {
            throw Fault.malformed("The data set has more than " + MOST_ITEMS + " items");
        }
        open(sequence, Level.Kind.ITEM, in.getInt() & UNDEFINED, sequence.implicit());
    }

    private void delimiter(Level level, Level.Kind kind, boolean right, int start) {
        if (!right || level.kind() != kind || !level.undefined() || in.getInt() != 0) {
            throw Fault.malformed("A delimiter or an item stands at byte " + start + " where none can be");
        }
        levels.pop();
    }

    private void element(Level level, int tag, int start) {
        boolean implicit = level.implicit();
        String vr = implicit ? dictionaryVr(tag) : String.valueOf(new char[] {(char) in.get(), (char) in.get()});
        long length = implicit ? in.getInt() & UNDEFINED : explicitLength(level, vr);
        if (vr.equals("SQ") || length == UNDEFINED) {
            // content of an undefined-length UN is always implicit little endian: PS3.5, 6.2.2 note 2
            open(level, Level.Kind.SEQUENCE, length, implicit || !vr.equals("SQ"));
            return;
        }
        requireWithin(level, length, start);
        in.position(in.position() + (int) length);
    }

    private static String dictionaryVr(int tag) {
        byte[] vr = AttributeList.getDictionary().getValueRepresentationFromTag(DataSet.toolkitTag(tag));
        return vr != null && ValueRepresentation.isSequenceVR(vr) ? "SQ" : "UN";
    }

    private long explicitLength(Level level, String vr) {
        ValueForm form = ValueForm.of(vr).orElseThrow(() -> Fault.malformed("A value representation does not exist"));
        if (!form.longLength()) {
            return in.getShort() & 0xffff;
        }
        if (level.end() - in.position() < Short.BYTES + Integer.BYTES) {
            throw Fault.malformed("The data set ends in the middle of an element");
        }
        in.getShort();
        return in.getInt() & UNDEFINED;
    }

    private void open(Level enclosing, Level.Kind kind, long length, boolean implicit) {
        boolean undefined = length == UNDEFINED;
        if (!undefined) {
            requireWithin(enclosing, length, in.position());
        }
        if (levels.size() > 2 * Gate.MAX_DEPTH) {
            throw Fault.malformed("The data set has more than " + Gate.MAX_DEPTH + " levels of sequences");
        }
        int end = undefined ? enclosing.end() : in.position() + (int) length;
        levels.push(new Level(kind, end, undefined, implicit));
    }

    private void requireWithin(Level level, long length, int start) {
        if (length > level.end() - in.position()) {
            throw Fault.malformed("The element at byte " + start + " is longer than what encloses it");
        }
    }
}
