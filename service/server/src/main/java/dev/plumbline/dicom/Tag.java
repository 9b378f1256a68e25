// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

/** Tags by the keyword of the standard's dictionary, DICOM PS3.6; group in the upper, element in the lower 16 bits. */
public final class Tag {
    public static final int MEDIA_STORAGE_SOP_CLASS_UID = 0x00020002;
    public static final int MEDIA_STORAGE_SOP_INSTANCE_UID = 0x00020003;
    public static final int TRANSFER_SYNTAX_UID = 0x00020010;
    public static final int SPECIFIC_CHARACTER_SET = 0x00080005;
    public static final int IMAGE_TYPE = 0x00080008;
    public static final int SOP_CLASS_UID = 0x00080016;
    public static final int SOP_INSTANCE_UID = 0x00080018;
    public static final int STUDY_DATE = 0x00080020;
    public static final int STUDY_TIME = 0x00080030;
    public static final int MODALITY = 0x00080060;
    public static final int PATIENT_NAME = 0x00100010;
    public static final int PATIENT_ID = 0x00100020;
    public static final int STUDY_INSTANCE_UID = 0x0020000D;
    public static final int SERIES_INSTANCE_UID = 0x0020000E;
    public static final int NUMBER_OF_FRAMES = 0x00280008;
    public static final int ROWS = 0x00280010;
    public static final int COLUMNS = 0x00280011;

    private Tag() {}

    /** The usual notation, such as {@code 0010,0020}. */
    public static String text(int tag) {
        return String.format("%04x,%04x", tag >>> 16, tag & 0xffff);
    }
}
