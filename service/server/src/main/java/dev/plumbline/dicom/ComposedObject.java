// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

/**
 * One DICOM object of a record, ready to be kept.
 *
 * @param part {@code sr}, {@code sc/1} and so on; the same part of the same revision has the same identifiers
 * @param bytes the whole file; kept, not copied
 */
@SuppressWarnings("ArrayRecordComponent") // handed over once, never compared; a megabyte is not copied for form's sake
public record ComposedObject(String part, String sopClassUid, String sopInstanceUid, byte[] bytes) {
    /** Whether this is the structured report, by whose UID the record goes. */
    public boolean isReport() {
        return part.equals(ObjectHeader.Kind.REPORT.part());
    }
}
