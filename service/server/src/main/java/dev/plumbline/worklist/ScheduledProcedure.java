// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.worklist;

import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.Tag;
import java.util.List;

/**
 * One scheduled procedure step as the worklist states it; a text is empty where it states nothing. Source: DICOM PS3.4,
 * table K.6-1.
 */
public record ScheduledProcedure(Person patient, Order order, Step step) {
    /** Who. */
    public record Person(String name, String id, String issuerOfId, String birthDate, String sex) {}

    /** What was requested, and the study it belongs to. */
    public record Order(
            String accessionNumber,
            String requestedProcedureId,
            String description,
            String studyInstanceUid,
            String referringPhysician) {}

    /** When and where. */
    public record Step(
            String id, String description, String date, String time, String modality, String stationAeTitle) {}

    static ScheduledProcedure of(DataSet item) {
        List<DataSet> steps = item.items(Tag.SCHEDULED_PROCEDURE_STEP_SEQUENCE);
        DataSet step = steps.isEmpty() ? new DataSet() : steps.get(0);
        return new ScheduledProcedure(
                new Person(
                        text(item, Tag.PATIENT_NAME),
                        text(item, Tag.PATIENT_ID),
                        text(item, Tag.ISSUER_OF_PATIENT_ID),
                        text(item, Tag.PATIENT_BIRTH_DATE),
                        text(item, Tag.PATIENT_SEX)),
                new Order(
                        text(item, Tag.ACCESSION_NUMBER),
                        text(item, Tag.REQUESTED_PROCEDURE_ID),
                        text(item, Tag.REQUESTED_PROCEDURE_DESCRIPTION),
                        text(item, Tag.STUDY_INSTANCE_UID),
                        text(item, Tag.REFERRING_PHYSICIAN_NAME)),
                new Step(
                        text(step, Tag.SCHEDULED_PROCEDURE_STEP_ID),
                        text(step, Tag.SCHEDULED_PROCEDURE_STEP_DESCRIPTION),
                        text(step, Tag.SCHEDULED_PROCEDURE_STEP_START_DATE),
                        text(step, Tag.SCHEDULED_PROCEDURE_STEP_START_TIME),
                        text(step, Tag.MODALITY),
                        text(step, Tag.SCHEDULED_STATION_AE_TITLE)));
    }

    private static String text(DataSet dataSet, int tag) {
        return dataSet.string(tag).orElse("");
    }
}
