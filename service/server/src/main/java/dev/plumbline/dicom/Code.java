// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

/**
 * A coded concept, DICOM PS3.3 8.8.
 *
 * @param value at most 16 characters (SH)
 * @param scheme coding scheme designator, such as {@code DCM}, {@code SCT} or {@code 99PLUMB}
 * @param meaning at most 64 characters (LO); never compared
 */
public record Code(String value, String scheme, String meaning) {
    /** The same concept, whatever words an author put beside it. */
    public boolean means(Code other) {
        return value.equals(other.value) && scheme.equals(other.scheme);
    }

    /** As in the standard's tables: {@code (126000, DCM, "Imaging Measurement Report")}. */
    @Override
    public String toString() {
        return "(" + value + ", " + scheme + ", \"" + meaning + "\")";
    }
}
