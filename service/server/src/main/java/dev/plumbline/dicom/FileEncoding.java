// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.AttributeList;
import com.pixelmed.dicom.AttributeTag;
import com.pixelmed.dicom.DicomException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;

/** Data sets as DICOM files: Explicit VR Little Endian, our own file meta information, zero preamble. */
final class FileEncoding {
    private static final int META_GROUP = 2;
    private static final int EXPECTED_SIZE = 1 << 16;

    private FileEncoding() {}

    static byte[] encode(DataSet dataSet) {
        AttributeList whole = meta(dataSet).attributes();
        dataSet.attributes().forEach((tag, attribute) -> {
            if (tag.getGroup() > META_GROUP) {
                whole.put(attribute);
            }
        });
        ByteArrayOutputStream out = new ByteArrayOutputStream(EXPECTED_SIZE);
        try {
            whole.write(out, TransferSyntax.EXPLICIT_LITTLE_ENDIAN.uid(), true, false);
        } catch (DicomException e) {
            throw new IllegalArgumentException("The data set cannot be written.", e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static DataSet meta(DataSet dataSet) {
        DataSet meta = new DataSet()
                .put(Tag.FILE_META_INFORMATION_VERSION, new byte[] {0, 1})
                .put(Tag.MEDIA_STORAGE_SOP_CLASS_UID, required(dataSet, Tag.SOP_CLASS_UID))
                .put(Tag.MEDIA_STORAGE_SOP_INSTANCE_UID, required(dataSet, Tag.SOP_INSTANCE_UID))
                .put(Tag.TRANSFER_SYNTAX_UID, TransferSyntax.EXPLICIT_LITTLE_ENDIAN.uid())
                .put(Tag.IMPLEMENTATION_CLASS_UID, Implementation.CLASS_UID)
                .put(Tag.IMPLEMENTATION_VERSION_NAME, Implementation.VERSION_NAME);
        return meta.put(Tag.FILE_META_INFORMATION_GROUP_LENGTH, length(meta));
    }

    private static int length(DataSet meta) {
        long length = 0;
        for (AttributeTag tag : meta.attributes().keySet()) {
            boolean longHeader = tag.getElement() == (Tag.FILE_META_INFORMATION_VERSION & 0xffff);
            length += (longHeader ? 12 : 8) + meta.attributes().get(tag).getPaddedVL();
        }
        return Math.toIntExact(length);
    }

    private static String required(DataSet dataSet, int tag) {
        return dataSet.string(tag)
                .orElseThrow(() -> new IllegalArgumentException("A data set needs " + Fault.name(tag) + "."));
    }
}
