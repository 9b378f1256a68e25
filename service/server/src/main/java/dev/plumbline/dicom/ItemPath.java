// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

/** Where an item of a sequence stands, counted from 1 as the standard does. */
final class ItemPath {
    private ItemPath() {}

    /** Such as {@code GraphicLayerSequence (0070,0060) item 2}. */
    static String of(int sequence, int index) {
        return Fault.name(sequence) + " item " + (index + 1);
    }
}
