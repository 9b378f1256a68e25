// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.Attribute;
import com.pixelmed.dicom.DicomException;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Set;

/** Binary values of a data set as bytes, little-endian whatever the file's byte order was. */
public final class BulkData {
    /** Binary value representations. Source: DICOM PS3.18 F.2.7. */
    private static final Set<String> BINARY = Set.of("OB", "OD", "OF", "OL", "OV", "OW", "UN");

    private static final int HEXADECIMAL = 16;

    private BulkData() {}

    static boolean isBinary(Attribute attribute) {
        return BINARY.contains(attribute.getVRAsString());
    }

    /**
     * The value at a path of tags and item numbers from 1, such as {@code 00420011} or {@code 54000100.1.54001010}.
     *
     * @throws Refusal {@link Problem.NotHeld} where the path names no binary value
     */
    public static byte[] at(String path, DataSet from) {
        List<String> steps = List.of(path.split("\\."));
        DataSet inner = from;
        for (int i = 0; i + 2 < steps.size(); i += 2) {
            inner = item(inner, steps.get(i), steps.get(i + 1));
        }
        Attribute attribute = inner.attributes().get(DataSet.toolkitTag(tag(steps.get(steps.size() - 1))));
        if (attribute == null || !isBinary(attribute)) {
            throw nothingThere();
        }
        return bytes(attribute);
    }

    private static DataSet item(DataSet from, String tag, String number) {
        List<DataSet> items = from.items(tag(tag));
        int index = Integer.parseInt(number) - 1;
        if (index < 0 || index >= items.size()) {
            throw nothingThere();
        }
        return items.get(index);
    }

    private static int tag(String text) {
        return Integer.parseUnsignedInt(text, HEXADECIMAL);
    }

    private static Refusal nothingThere() {
        return new Refusal(new Problem.NotHeld(
                "", "The object has no binary value at this place.", "Use the BulkDataURI of the object's metadata."));
    }

    static byte[] bytes(Attribute attribute) {
        try {
            return switch (attribute.getVRAsString()) {
                case "OW" -> littleEndian(attribute.getShortValues());
                case "OL" -> littleEndian(attribute.getIntegerValues());
                case "OF" -> littleEndian(attribute.getFloatValues());
                case "OD" -> littleEndian(attribute.getDoubleValues());
                case "OV" -> littleEndian(attribute.getLongValues());
                default -> attribute.getByteValues();
            };
        } catch (DicomException e) {
            throw new IllegalStateException("A binary value that passed the gate cannot be read", e);
        }
    }

    private static byte[] littleEndian(short[] values) {
        byte[] bytes = bytes(values.length, Short.BYTES);
        littleEndian(bytes).asShortBuffer().put(values);
        return bytes;
    }

    private static byte[] littleEndian(int[] values) {
        byte[] bytes = bytes(values.length, Integer.BYTES);
        littleEndian(bytes).asIntBuffer().put(values);
        return bytes;
    }

    private static byte[] littleEndian(long[] values) {
        byte[] bytes = bytes(values.length, Long.BYTES);
        littleEndian(bytes).asLongBuffer().put(values);
        return bytes;
    }

    private static byte[] littleEndian(float[] values) {
        byte[] bytes = bytes(values.length, Float.BYTES);
        littleEndian(bytes).asFloatBuffer().put(values);
        return bytes;
    }

    private static byte[] littleEndian(double[] values) {
        byte[] bytes = bytes(values.length, Double.BYTES);
        littleEndian(bytes).asDoubleBuffer().put(values);
        return bytes;
    }

    private static byte[] bytes(int count, int size) {
        return new byte[Math.multiplyExact(count, size)];
    }

    private static ByteBuffer littleEndian(byte[] bytes) {
        return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }
}
