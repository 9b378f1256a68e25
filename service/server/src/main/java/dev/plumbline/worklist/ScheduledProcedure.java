// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.worklist;

import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.Tag;
import java.util.ArrayList;
import java.util.List;

/**
 * One scheduled procedure step as the worklist states it; a text is empty where it states nothing. Source: DICOM PS3.4,
 * table K.6-1.
 *
 * @param unreadable names of texts that are empty here because they came in characters that the item does not declare: a
 *     name that was guessed would stand in a record as somebody's
 */
public record ScheduledProcedure(Person patient, Order order, Step step, List<String> unreadable) {
    /** Source: The Unicode Standard, 23.8, U+FFFD replacement character. */
    private static final int REPLACEMENT = 0xFFFD;

    public ScheduledProcedure {
        unreadable = List.copyOf(unreadable);
    }

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
        Texts of = new Texts(item, new ArrayList<>());
        Texts step = new Texts(steps.isEmpty() ? new DataSet() : steps.get(0), of.unreadable());
        return new ScheduledProcedure(
                new Person(
                        of.text(Tag.PATIENT_NAME, "patient.name"),
                        of.text(Tag.PATIENT_ID, "patient.id"),
                        of.text(Tag.ISSUER_OF_PATIENT_ID, "patient.issuerOfId"),
                        of.text(Tag.PATIENT_BIRTH_DATE, "patient.birthDate"),
                        of.text(Tag.PATIENT_SEX, "patient.sex")),
                new Order(
                        of.text(Tag.ACCESSION_NUMBER, "accessionNumber"),
                        of.text(Tag.REQUESTED_PROCEDURE_ID, "requestedProcedureId"),
                        of.text(Tag.REQUESTED_PROCEDURE_DESCRIPTION, "requestedProcedureDescription"),
                        of.text(Tag.STUDY_INSTANCE_UID, "studyInstanceUid"),
                        of.text(Tag.REFERRING_PHYSICIAN_NAME, "referringPhysician")),
                new Step(
                        step.text(Tag.SCHEDULED_PROCEDURE_STEP_ID, "scheduledProcedureStepId"),
                        step.text(Tag.SCHEDULED_PROCEDURE_STEP_DESCRIPTION, "scheduledProcedureStepDescription"),
                        step.text(Tag.SCHEDULED_PROCEDURE_STEP_START_DATE, "startDate"),
                        step.text(Tag.SCHEDULED_PROCEDURE_STEP_START_TIME, "startTime"),
                        step.text(Tag.MODALITY, "modality"),
                        step.text(Tag.SCHEDULED_STATION_AE_TITLE, "stationAeTitle")),
                of.unreadable());
    }

    /** The texts of a data set, and the names of those that cannot be read. */
    private record Texts(DataSet dataSet, List<String> unreadable) {
        String text(int tag, String name) {
            String value = dataSet.string(tag).orElse("");
            if (value.codePoints().noneMatch(Texts::isUndeclared)) {
                return value;
            }
            unreadable.add(name);
            return "";
        }

        /** What stands for bytes that are no character, or an escape sequence that nothing announced. */
        private static boolean isUndeclared(int character) {
            return character == REPLACEMENT || Character.isISOControl(character);
        }
    }
}
