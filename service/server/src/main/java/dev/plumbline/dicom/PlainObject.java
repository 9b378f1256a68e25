// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.AttributeList;
import com.pixelmed.dicom.DicomException;
import com.pixelmed.dicom.DicomInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A structured report in Explicit VR Little Endian, read in one pass over its bytes, several times as fast as by the
 * toolkit, which stays in charge of everything else. The gate has let the file through before; here only bounds are
 * watched, and whatever is unusual is left to the toolkit.
 */
final class PlainObject {
    /** Character sets whose text is what the bytes say as UTF-8, or as ASCII where they are nothing more. */
    private static final Set<String> CHARACTER_SETS = Set.of("", "ISO_IR 6", "ISO_IR 100", "ISO_IR 192");

    private static final String UTF_8 = "ISO_IR 192";
    private static final int PREAMBLE = 132;
    private static final int DEEPEST = Gate.MAX_DEPTH;
    private static final int ESCAPE = 0x1b;

    private final byte[] bytes;
    private final ByteBuffer in;
    private final PlainItem root = new PlainItem(this);
    private int elements;
    private boolean utf8;
    private boolean usual = true;
    private @Nullable AttributeList taken;

    private PlainObject(byte[] bytes) {
        this.bytes = bytes;
        in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }

    /** The object; empty where something in it is better left to the toolkit. */
    static Optional<PlainObject> read(byte[] file) {
        PlainObject object = new PlainObject(file);
        object.in.position(PREAMBLE);
        object.elements(object.root, file.length, false, 0);
        return object.usual && object.textIsPlain() ? Optional.of(object) : Optional.empty();
    }

    private boolean textIsPlain() {
        List<String> sets = root.strings(Tag.SPECIFIC_CHARACTER_SET).orElse(List.of("?"));
        utf8 = sets.equals(List.of(UTF_8));
        return sets.size() <= 1 && CHARACTER_SETS.contains(sets.isEmpty() ? "" : sets.get(0));
    }

    /** How many attributes there are, counted as the gate counts. */
    int elements() {
        return elements;
    }

    PlainItem root() {
        return root;
    }

    byte[] bytes() {
        return bytes;
    }

    /** @param undefined ends at an item delimiter */
    private void elements(PlainItem item, int end, boolean undefined, int depth) {
        while (usual && in.position() < end) {
            int tag = tag();
            if (tag == Gate.ITEM_DELIMITER && undefined) {
                in.getInt();
                return;
            }
            elements++;
            element(item, tag, end, depth);
        }
    }

    private int tag() {
        int group = in.getShort() & 0xffff;
        return group << 16 | in.getShort() & 0xffff;
    }

    private void element(PlainItem item, int tag, int end, int depth) {
        int first = in.get();
        int second = in.get();
        ValueForm.Named form = ValueForm.named(first, second);
        if (form == null || (tag & 0x10000) != 0) { // private attributes have rules of their own in the toolkit
            usual = false;
            return;
        }
        int length;
        if (form.form().longLength()) {
            in.getShort();
            length = in.getInt();
        } else {
            length = in.getShort() & 0xffff;
        }
        item.add(tag, form.vr(), in.position(), Math.max(length, 0));
        if (form.vr().equals("SQ")) {
            sequence(item, tag, length, end, depth + 1);
        } else if (length < 0 || length > end - in.position() || nestedCharacterSet(tag, depth)) {
            usual = false;
        } else {
            in.position(in.position() + length);
        }
    }

    private static boolean nestedCharacterSet(int tag, int depth) {
        return tag == Tag.SPECIFIC_CHARACTER_SET && depth > 0;
    }

    private void sequence(PlainItem parent, int tag, int length, int outerEnd, int depth) {
        boolean undefined = length == -1;
        int end = undefined ? outerEnd : in.position() + length;
        if (depth > DEEPEST || end > outerEnd || end < in.position()) {
            usual = false;
            return;
        }
        List<PlainItem> items = parent.openItems();
        while (usual && in.position() < end) {
            int mark = tag();
            int itemLength = in.getInt();
            if (mark == Gate.SEQUENCE_DELIMITER && undefined) {
                return;
            }
            boolean open = itemLength == -1;
            int itemEnd = open ? end : in.position() + itemLength;
            if (mark != Gate.ITEM || itemEnd > end || itemEnd < in.position()) {
                usual = false;
                return;
            }
            PlainItem item = new PlainItem(parent, tag, items.size());
            items.add(item);
            elements(item, itemEnd, open, depth);
        }
    }

    /** Text without its padding; empty where the bytes are no plain text of the object's character set. */
    Optional<String> text(int start, int length) {
        int end = start + length;
        boolean ascii = true;
        for (int i = start; i < end; i++) {
            if (bytes[i] == ESCAPE || bytes[i] == 0 && i + 1 < end) {
                return Optional.empty();
            }
            ascii &= bytes[i] >= 0;
        }
        if (length > 0 && bytes[end - 1] == 0) {
            end--;
        }
        if (ascii) {
            return Optional.of(new String(bytes, start, end - start, StandardCharsets.ISO_8859_1));
        }
        return utf8 ? Optional.of(new String(bytes, start, end - start, StandardCharsets.UTF_8)) : Optional.empty();
    }

    boolean isTaken() {
        return taken != null;
    }

    /** The object as the toolkit reads it; once. */
    AttributeList take() {
        if (taken == null) {
            AttributeList attributes = new AttributeList();
            attributes.setDecompressPixelData(false);
            try {
                ToolkitLog.watch(() -> attributes.read(new DicomInputStream(new ByteArrayInputStream(bytes))));
            } catch (DicomException e) {
                throw Fault.malformed("The toolkit cannot read the object");
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            taken = attributes;
        }
        return taken;
    }
}
