// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.AttributeList;
import com.pixelmed.dicom.DicomException;
import com.pixelmed.dicom.DicomInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A small object in Explicit VR Little Endian as the gate saw it: where everything stands in the bytes of its file, so that
 * a value is decoded when it is asked for, many times as fast as the toolkit reads the whole. The toolkit stays in charge of
 * everything else: an object with anything unusual in it is none of these, and one that is changed becomes the toolkit's.
 */
final class PlacedObject {
    /** Character sets whose text is what the bytes say as UTF-8, or as ASCII where they are nothing more. */
    private static final Set<String> CHARACTER_SETS = Set.of("", "ISO_IR 6", "ISO_IR 100", "ISO_IR 192");

    private static final String UTF_8 = "ISO_IR 192";
    private static final int ESCAPE = 0x1b;

    private final byte[] bytes;
    private final PlacedItem root = new PlacedItem(this);
    private boolean usual;
    private boolean utf8;
    private @Nullable AttributeList taken;

    /** @param file its bytes; empty for a file too large for this, of which nothing is kept */
    PlacedObject(Optional<byte[]> file) {
        bytes = file.orElse(new byte[0]);
        usual = file.isPresent();
    }

    PlacedItem root() {
        return root;
    }

    byte[] bytes() {
        return bytes;
    }

    /** Something in the object is better left to the toolkit. */
    void leaveToToolkit() {
        usual = false;
    }

    boolean isUsual() {
        return usual;
    }

    /** Ends the building; empty where the object is left to the toolkit. */
    Optional<PlacedObject> built() {
        if (!usual) {
            return Optional.empty();
        }
        List<String> sets = root.strings(Tag.SPECIFIC_CHARACTER_SET).orElse(List.of("?"));
        utf8 = sets.equals(List.of(UTF_8));
        boolean known = sets.size() <= 1 && CHARACTER_SETS.contains(sets.isEmpty() ? "" : sets.get(0));
        return known ? Optional.of(this) : Optional.empty();
    }

    /** Text without its padding; null where the bytes are no plain text of the object's character set. */
    @Nullable
    String text(int start, int length) {
        int end = start + length;
        boolean ascii = true;
        for (int i = start; i < end; i++) {
            if (bytes[i] == ESCAPE || (bytes[i] == 0 && i + 1 < end)) {
                return null;
            }
            ascii &= bytes[i] >= 0;
        }
        if (length > 0 && bytes[end - 1] == 0) {
            end--;
        }
        if (ascii) {
            return new String(bytes, start, end - start, StandardCharsets.ISO_8859_1);
        }
        return utf8 ? new String(bytes, start, end - start, StandardCharsets.UTF_8) : null;
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
