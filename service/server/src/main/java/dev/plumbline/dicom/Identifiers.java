// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.AttributeList;
import com.pixelmed.dicom.DicomException;
import com.pixelmed.dicom.DicomInputStream;
import com.pixelmed.dicom.DicomOutputStream;
import dev.plumbline.problem.Refusal;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Small data sets without a file around them, as queries, their answers and reports travel. Source: DICOM PS3.5, 7.1;
 * only the plain little-endian encodings.
 */
public final class Identifiers {
    private static final int ITEM = 0xe000fffe; // FFFE,E000 as its bytes stand, low byte first
    private static final int MOST_ITEMS = 1_000;
    private static final int HEADER_BYTES = 8;
    private static final int LONG_FORM_BYTES = 12;
    private static final int UNDEFINED = -1;

    private Identifiers() {}

    /** The data set in the given encoding. */
    public static byte[] write(DataSet dataSet, TransferSyntax syntax) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DicomOutputStream out = new DicomOutputStream(bytes, null, syntax.uid())) {
            dataSet.attributes().write(out);
        } catch (DicomException e) {
            throw new IllegalArgumentException("The data set cannot be written.", e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /**
     * Reads a data set that came from outside.
     *
     * @throws Refusal when it is not whole and well formed
     */
    public static DataSet read(byte[] bytes, TransferSyntax syntax) {
        requireShape(bytes, syntax);
        AttributeList attributes = new AttributeList();
        try (DicomInputStream in = new DicomInputStream(new ByteArrayInputStream(bytes), syntax.uid(), false)) {
            ToolkitLog.watch(() -> {
                attributes.read(in);
                return attributes;
            });
        } catch (DicomException | IOException e) {
            throw Fault.malformed("The toolkit cannot read the data set");
        }
        return new DataSet(attributes);
    }

    /** The toolkit takes broken data sets for good and recurses into items; so lengths and items are looked at first. */
    private static void requireShape(byte[] bytes, TransferSyntax syntax) {
        if (syntax.bigEndian() || syntax.encapsulated()) {
            throw new IllegalArgumentException("Identifiers come in the plain little-endian encodings.");
        }
        ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        int items = 0;
        for (int i = 0; i + Integer.BYTES <= bytes.length; i++) {
            items += in.getInt(i) == ITEM ? 1 : 0;
        }
        if (items > MOST_ITEMS) {
            throw Fault.malformed("The data set has more than " + MOST_ITEMS + " items");
        }
        while (in.hasRemaining()) {
            int start = in.position();
            if (in.remaining() < HEADER_BYTES) {
                throw Fault.malformed("The data set ends in the middle of an element");
            }
            int length = length(in, syntax.implicit());
            if (length == UNDEFINED) {
                return; // the toolkit follows delimiters, and says so where they are missing
            }
            if (length < 0 || length > in.remaining()) {
                throw Fault.malformed("The element at byte " + start + " is longer than the data set");
            }
            in.position(in.position() + length);
        }
    }

    private static int length(ByteBuffer in, boolean implicit) {
        in.position(in.position() + Integer.BYTES);
        if (implicit) {
            return in.getInt();
        }
        String vr = String.valueOf(new char[] {(char) in.get(), (char) in.get()});
        ValueForm form = ValueForm.of(vr).orElseThrow(() -> Fault.malformed("A value representation does not exist"));
        if (!form.longLength()) {
            return in.getShort() & 0xffff;
        }
        if (in.remaining() < LONG_FORM_BYTES - HEADER_BYTES + 2) {
            throw Fault.malformed("The data set ends in the middle of an element");
        }
        in.getShort();
        return in.getInt();
    }
}
