// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static dev.plumbline.archive.QueryAttribute.Kind.CODE;
import static dev.plumbline.archive.QueryAttribute.Kind.DATE;
import static dev.plumbline.archive.QueryAttribute.Kind.NAME;
import static dev.plumbline.archive.QueryAttribute.Kind.NUMBER;
import static dev.plumbline.archive.QueryAttribute.Kind.TEXT;
import static dev.plumbline.archive.QueryAttribute.Kind.TIME;
import static dev.plumbline.archive.QueryAttribute.Kind.UID;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * What a search can match on. The constant's name, in lower case, is the column of the index.
 *
 * <p>Source: DICOM PS3.18 10.6, required matching attributes of studies, series and instances (PS3.4 C.6.2.1), and the
 * descriptions, which viewers ask for.
 */
public enum QueryAttribute {
    STUDY_DATE(0x00080020, DATE, QueryLevel.STUDY),
    STUDY_TIME(0x00080030, TIME, QueryLevel.STUDY),
    ACCESSION_NUMBER(0x00080050, TEXT, QueryLevel.STUDY),
    REFERRING_PHYSICIAN_NAME(0x00080090, NAME, QueryLevel.STUDY),
    STUDY_DESCRIPTION(0x00081030, TEXT, QueryLevel.STUDY),
    PATIENT_NAME(0x00100010, NAME, QueryLevel.STUDY),
    PATIENT_ID(0x00100020, TEXT, QueryLevel.STUDY),
    PATIENT_BIRTH_DATE(0x00100030, DATE, QueryLevel.STUDY),
    STUDY_INSTANCE_UID(0x0020000D, UID, QueryLevel.STUDY),
    STUDY_ID(0x00200010, TEXT, QueryLevel.STUDY),
    MODALITY(0x00080060, CODE, QueryLevel.SERIES),
    SERIES_DATE(0x00080021, DATE, QueryLevel.SERIES),
    SERIES_TIME(0x00080031, TIME, QueryLevel.SERIES),
    SERIES_DESCRIPTION(0x0008103E, TEXT, QueryLevel.SERIES),
    SERIES_INSTANCE_UID(0x0020000E, UID, QueryLevel.SERIES),
    SERIES_NUMBER(0x00200011, NUMBER, QueryLevel.SERIES),
    PERFORMED_PROCEDURE_STEP_START_DATE(0x00400244, DATE, QueryLevel.SERIES),
    PERFORMED_PROCEDURE_STEP_START_TIME(0x00400245, TIME, QueryLevel.SERIES),
    SOP_CLASS_UID(0x00080016, UID, QueryLevel.INSTANCE),
    SOP_INSTANCE_UID(0x00080018, UID, QueryLevel.INSTANCE),
    CONTENT_DATE(0x00080023, DATE, QueryLevel.INSTANCE),
    CONTENT_TIME(0x00080033, TIME, QueryLevel.INSTANCE),
    INSTANCE_NUMBER(0x00200013, NUMBER, QueryLevel.INSTANCE);

    /** How values are compared. Source: DICOM PS3.4 C.2.2.2. */
    public enum Kind {
        /** As it is, with wildcards. */
        TEXT,
        /** One or a list, as they are, with wildcards. A code string holds neither comma nor backslash. */
        CODE,
        /** Without regard to case, with wildcards. */
        NAME,
        /** One or a list. */
        UID,
        /** One or a range. */
        DATE,
        /** One or a range. */
        TIME,
        NUMBER
    }

    private final int tag;
    private final Kind kind;
    private final QueryLevel level;

    QueryAttribute(int tag, Kind kind, QueryLevel level) {
        this.tag = tag;
        this.kind = kind;
        this.level = level;
    }

    public static Optional<QueryAttribute> of(int tag) {
        return Arrays.stream(values()).filter(each -> each.tag == tag).findFirst();
    }

    public int tag() {
        return tag;
    }

    public Kind kind() {
        return kind;
    }

    public QueryLevel level() {
        return level;
    }

    String column() {
        return name().toLowerCase(Locale.ROOT);
    }
}
