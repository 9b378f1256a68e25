// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

/** Says which program wrote a file or opened an association. Source: DICOM PS3.7, D.3.3.2 and PS3.10, 7.1. */
public final class Implementation {
    /** Made once from a random UUID (DICOM PS3.5, B.2) and never changed. */
    public static final String CLASS_UID = "2.25.313683180651026660120984154647505652126";

    /** At most 16 characters. */
    public static final String VERSION_NAME = "PLUMBLINE_0_1";

    private Implementation() {}
}
