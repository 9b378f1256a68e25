// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

/**
 * A table from stored or modality values to values of a given number of bits. Source: DICOM PS3.3, C.11.1.1.1, C.11.2.1.1
 * and C.7.6.3.1.5.
 */
final class LookupTable {
    private static final int MOST_ENTRIES = 1 << 16;

    private final int first;
    private final int bits;
    private final int[] entries;

    private LookupTable(int first, int bits, int[] entries) {
        this.first = first;
        this.bits = bits;
        this.entries = entries;
    }

    /**
     * @param signed whether the descriptor's second value is two's complement
     * @throws dev.plumbline.problem.Refusal if descriptor and data do not go together
     */
    static LookupTable read(DataSet from, int descriptorTag, int dataTag, boolean signed) {
        double[] descriptor = from.numbers(descriptorTag);
        if (descriptor.length != 3) {
            throw Fault.malformed(Fault.name(descriptorTag) + " is missing or has not three values");
        }
        int count = ((int) descriptor[0]) & 0xffff;
        int first = signed ? (short) (int) descriptor[1] : ((int) descriptor[1]) & 0xffff;
        int bits = (int) descriptor[2];
        if (bits < 8 || bits > 16) {
            throw Fault.malformed(Fault.name(descriptorTag) + " has " + bits + " bits, not 8 to 16");
        }
        return new LookupTable(first, bits, entries(from, dataTag, count == 0 ? MOST_ENTRIES : count));
    }

    private static int[] entries(DataSet from, int tag, int count) {
        byte[] bytes = from.bytes(tag);
        int[] entries = new int[count];
        if (bytes.length >= 2 * count) {
            for (int i = 0; i < count; i++) {
                entries[i] = (bytes[2 * i] & 0xff) | (bytes[2 * i + 1] & 0xff) << 8;
            }
        } else if (bytes.length >= count) {
            for (int i = 0; i < count; i++) {
                entries[i] = bytes[i] & 0xff;
            }
        } else {
            throw Fault.malformed(Fault.name(tag) + " is missing or has fewer than " + count + " entries");
        }
        return entries;
    }

    int bits() {
        return bits;
    }

    /** The entry of an input; beyond either end that of the end. */
    int at(double input) {
        int index = (int) Math.rint(input) - first;
        return entries[Math.min(Math.max(index, 0), entries.length - 1)];
    }

    /** The entry as a fraction of the largest that its bits can hold. */
    double fraction(double input) {
        return at(input) / (double) ((1 << bits) - 1);
    }
}
