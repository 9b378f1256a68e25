// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.Attribute;
import com.pixelmed.dicom.DicomException;
import com.pixelmed.dicom.StringAttribute;
import com.pixelmed.dicom.TextAttribute;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** Values as bytes: text as it came, binary values low byte first, whatever encoding they came in. */
final class BinaryValues {
    private BinaryValues() {}

    /** Source: DICOM PS3.5, 6.2. */
    static byte[] of(Attribute attribute) {
        try {
            if (attribute instanceof StringAttribute || attribute instanceof TextAttribute) {
                return attribute.getByteValues();
            }
            return switch (attribute.getVRAsString()) {
                case "OB", "UN" -> attribute.getByteValues();
                case "OF" -> floats(attribute.getFloatValues());
                case "OD" -> doubles(attribute.getDoubleValues());
                case "OL" -> ints(attribute.getIntegerValues());
                case "OV", "SV", "UV" -> longs(attribute.getLongValues());
                default -> words(attribute.getShortValues());
            };
        } catch (DicomException e) {
            throw new IllegalStateException(attribute.getTag() + " holds no binary values.", e);
        }
    }

    private static byte[] words(short[] values) {
        ByteBuffer bytes = ByteBuffer.allocate(Math.multiplyExact(values.length, Short.BYTES));
        bytes.order(ByteOrder.LITTLE_ENDIAN).asShortBuffer().put(values);
        return bytes.array();
    }

    private static byte[] ints(int[] values) {
        ByteBuffer bytes = ByteBuffer.allocate(Math.multiplyExact(values.length, Integer.BYTES));
        bytes.order(ByteOrder.LITTLE_ENDIAN).asIntBuffer().put(values);
        return bytes.array();
    }

    private static byte[] longs(long[] values) {
        ByteBuffer bytes = ByteBuffer.allocate(Math.multiplyExact(values.length, Long.BYTES));
        bytes.order(ByteOrder.LITTLE_ENDIAN).asLongBuffer().put(values);
        return bytes.array();
    }

    private static byte[] floats(float[] values) {
        ByteBuffer bytes = ByteBuffer.allocate(Math.multiplyExact(values.length, Float.BYTES));
        bytes.order(ByteOrder.LITTLE_ENDIAN).asFloatBuffer().put(values);
        return bytes.array();
    }

    private static byte[] doubles(double[] values) {
        ByteBuffer bytes = ByteBuffer.allocate(Math.multiplyExact(values.length, Double.BYTES));
        bytes.order(ByteOrder.LITTLE_ENDIAN).asDoubleBuffer().put(values);
        return bytes.array();
    }
}
