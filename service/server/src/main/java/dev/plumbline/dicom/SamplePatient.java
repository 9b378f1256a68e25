// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.record.Uids;
import java.util.List;

/** The invented people of the sample set: one for each body, recognisable as invented at a glance. */
record SamplePatient(int number, String word, String study) {
    static final String DATE = "20260105";
    private static final String TIME = "100000";

    private static final List<String> BLOCKS = List.of(
            "sciaticPopliteal",
            "femoralNerve",
            "medianNerve",
            "sciaticSubgluteal",
            "transversusAbdominisMidaxillary",
            "serratusSuperficial");
    private static final List<String> WORDS = List.of("One", "Two", "Three", "Four", "Five", "Six");
    private static final List<String> STUDIES = List.of(
            "Popliteal sciatic nerve block",
            "Femoral nerve block",
            "Median nerve block",
            "Subgluteal sciatic nerve block",
            "Transversus abdominis plane block",
            "Serratus anterior plane block");

    /** The one whose body shows where this block is done. */
    static SamplePatient of(String block) {
        int index = BLOCKS.indexOf(block);
        if (index < 0) {
            throw new IllegalArgumentException("Nobody in the sample set has a block " + block + ".");
        }
        return new SamplePatient(index + 1, WORDS.get(index), STUDIES.get(index));
    }

    /** Patient, General Study, General Series and General Equipment modules, DICOM PS3.3 C.7.1.1, C.7.2.1, C.7.3.1, C.7.5.1. */
    void describe(DataSet object, String set) {
        String own = set + " patient " + number;
        object.put(Tag.PATIENT_NAME, "Sample^Case " + word)
                .put(Tag.PATIENT_ID, String.format("SAMPLE-%04d", number))
                .put(Tag.PATIENT_BIRTH_DATE, (1960 + number) + "0101")
                .put(Tag.PATIENT_SEX, "O")
                .put(Tag.STUDY_INSTANCE_UID, Uids.series(own, "study"))
                .put(Tag.STUDY_DATE, DATE)
                .put(Tag.STUDY_TIME, TIME)
                .putEmpty(Tag.REFERRING_PHYSICIAN_NAME)
                .put(Tag.STUDY_ID, Integer.toString(number))
                .put(Tag.ACCESSION_NUMBER, String.format("SAMPLE%04d", number))
                .put(Tag.STUDY_DESCRIPTION, study)
                .put(Tag.SERIES_INSTANCE_UID, Uids.series(own, "ultrasound"))
                .put(Tag.SERIES_NUMBER, "1")
                .put(Tag.SERIES_DESCRIPTION, "Synthetic frames")
                .put(Tag.MODALITY, "US")
                .put(Tag.LATERALITY, "R")
                .put(Tag.MANUFACTURER, Installation.MANUFACTURER)
                .put(Tag.MANUFACTURER_MODEL_NAME, "Synthetic frames")
                .put(Tag.DEVICE_SERIAL_NUMBER, "SAMPLE")
                .put(Tag.SOFTWARE_VERSIONS, "1")
                .put(Tag.INSTITUTION_NAME, "Sample Hospital");
    }
}
