// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

/** Where the pixel data of a file lie. */
sealed interface PixelBytes {
    PixelShape shape();

    /**
     * Plain samples, frame after frame.
     *
     * @param swapped whether the bytes stand in pairs, the high byte of a 16-bit word first
     */
    record Plain(PixelShape shape, long offset, boolean swapped) implements PixelBytes {}

    /** Compressed frames as a chain of fragments. */
    record Encapsulated(PixelShape shape, Fragments fragments) implements PixelBytes {}
}
