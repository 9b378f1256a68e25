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

/**
 * Small data sets without a file around them, as queries, their answers and reports travel. Source: DICOM PS3.5, 7.1;
 * only the plain little-endian encodings.
 */
public final class Identifiers {
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
        if (syntax.bigEndian() || syntax.encapsulated()) {
            throw new IllegalArgumentException("Identifiers come in the plain little-endian encodings.");
        }
        IdentifierShape.require(bytes, syntax.implicit());
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
}
