// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.procedure.Laterality;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The order that a case was opened from, as the worklist states it; what is absent the worklist did not state.
 *
 * @param studyInstanceUid of the study that the ordering system has made for it
 * @param laterality the side that was ordered
 * @param resolved what a person made of differences between order, frame and case
 */
public record Order(
        Patient patient,
        Optional<String> accessionNumber,
        Optional<Procedure> requested,
        Optional<Procedure> scheduled,
        Optional<String> studyInstanceUid,
        Optional<String> referringPhysician,
        Optional<Laterality> laterality,
        List<Resolution> resolved) {
    public Order {
        resolved = List.copyOf(resolved);
    }

    /**
     * Who.
     *
     * @param name as a DICOM person name
     * @param birthDate year-month-day
     */
    public record Patient(
            Optional<String> id,
            Optional<String> issuerOfId,
            Optional<String> name,
            Optional<String> birthDate,
            Optional<String> sex) {
        public static final Patient NOTHING_STATED =
                new Patient(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** A requested procedure or a scheduled step of one. */
    public record Procedure(Optional<String> id, Optional<String> description) {}

    /** What order, frame and case must agree on. */
    public enum Item {
        PATIENT_ID("patientId"),
        ISSUER_OF_PATIENT_ID("issuerOfPatientId"),
        STUDY_INSTANCE_UID("studyInstanceUid"),
        ACCESSION_NUMBER("accessionNumber"),
        LATERALITY("laterality");

        private final String word;

        Item(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }

        /** Whose value can hold: a side is the case's to say, all else stands in order and frame. */
        public List<Holder> holders() {
            return this == LATERALITY ? List.of(Holder.CASE) : List.of(Holder.ORDER, Holder.FRAME);
        }
    }

    /** Whose value holds. */
    public enum Holder {
        ORDER("order"),
        FRAME("frame"),
        CASE("case");

        private final String word;

        Holder(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * A difference that a person has looked into.
     *
     * @param take whose value holds
     * @param by the person
     */
    public record Resolution(Item item, Holder take, String by, String reason) {}

    /** Whether a person said that the value of this holder holds for an item. */
    public boolean takes(Holder holder, Item... items) {
        return resolved.stream()
                .anyMatch(each -> each.take() == holder && Arrays.asList(items).contains(each.item()));
    }

    /** Whether a person said what holds for an item. */
    public boolean resolves(Item item) {
        return resolved.stream().anyMatch(each -> each.item() == item);
    }
}
