// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.util.List;

/** The services and their UIDs. Source: DICOM PS3.6, annex A; PS3.4, A.4, B.5, C.6, J.3.5, K.6. */
public final class SopClass {
    public static final String VERIFICATION = "1.2.840.10008.1.1";
    public static final String STORAGE_COMMITMENT = "1.2.840.10008.1.20.1";

    /** The one instance of storage commitment that everybody knows. */
    public static final String STORAGE_COMMITMENT_INSTANCE = "1.2.840.10008.1.20.1.1";

    public static final String STUDY_ROOT_FIND = "1.2.840.10008.5.1.4.1.2.2.1";
    public static final String STUDY_ROOT_GET = "1.2.840.10008.5.1.4.1.2.2.3";
    public static final String MODALITY_WORKLIST = "1.2.840.10008.5.1.4.31";

    /** Root of the classes of stored objects. */
    public static final String STORAGE_ROOT = "1.2.840.10008.5.1.4.1.1.";

    /** Transfer syntaxes of data sets that we make ourselves, the preferred one first. Source: PS3.5, A.1 and A.2. */
    public static final List<String> PLAIN_SYNTAXES = List.of("1.2.840.10008.1.2.1", "1.2.840.10008.1.2");

    private SopClass() {}
}
