// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.Arrays;

/**
 * The fragments of encapsulated pixel data by their place in the file, and which of them make up each frame. Source:
 * DICOM PS3.5, A.4.
 */
final class Fragments {
    private long[] offsets = new long[16];
    private long[] lengths = new long[16];
    private boolean[] opening = new boolean[16];
    private int count;
    private int[] firstOfFrame = new int[0];

    /** @param opensFrame whether the fragment begins as a compressed image begins */
    void add(long offset, long length, boolean opensFrame) {
        if (count == offsets.length) {
            offsets = Arrays.copyOf(offsets, count * 2);
            lengths = Arrays.copyOf(lengths, count * 2);
            opening = Arrays.copyOf(opening, count * 2);
        }
        offsets[count] = offset;
        lengths[count] = length;
        opening[count++] = opensFrame;
    }

    int count() {
        return count;
    }

    long offset(int fragment) {
        return offsets[fragment];
    }

    long length(int fragment) {
        return lengths[fragment];
    }

    /** First fragment of a frame, both from 0; the frame ends before the first one of the next. */
    int firstOf(int frame) {
        return frame == firstOfFrame.length ? count : firstOfFrame[frame];
    }

    /** Bytes of a frame over all its fragments. */
    long frameLength(int frame) {
        long sum = 0;
        for (int fragment = firstOf(frame); fragment < firstOf(frame + 1); fragment++) {
            sum += lengths[fragment];
        }
        return sum;
    }

    /**
     * Settles which fragments belong to a frame: all to the only one, else one each, else by the offset table, else by how
     * the fragments begin.
     *
     * @param table basic offset table: for each frame the distance of its first fragment's item from the first item
     * @return whether it could be settled without guessing
     */
    boolean share(int frames, long[] table) {
        if (frames == 1 && count >= 1) {
            firstOfFrame = new int[1];
        } else if (frames == count) {
            firstOfFrame = new int[frames];
            Arrays.setAll(firstOfFrame, i -> i);
        } else if (frames > count || !(byTable(frames, table) || byOpening(frames))) {
            return false;
        }
        return true;
    }

    private boolean byTable(int frames, long[] table) {
        if (table.length != frames) {
            return false;
        }
        int[] first = new int[frames];
        for (int frame = 0; frame < frames; frame++) {
            first[frame] = Arrays.binarySearch(offsets, 0, count, offsets[0] + table[frame]);
            if (first[frame] < 0 || (frame > 0 && first[frame] <= first[frame - 1])) {
                return false;
            }
        }
        firstOfFrame = first;
        return first[0] == 0;
    }

    private boolean byOpening(int frames) {
        int[] first = new int[frames];
        int found = 0;
        for (int fragment = 0; fragment < count; fragment++) {
            if (opening[fragment]) {
                if (found == frames) {
                    return false;
                }
                first[found++] = fragment;
            }
        }
        firstOfFrame = first;
        return found == frames && first[0] == 0;
    }
}
