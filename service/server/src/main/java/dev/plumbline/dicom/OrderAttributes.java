// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.document.CaseJson;
import dev.plumbline.record.Order;
import dev.plumbline.record.Order.Holder;
import dev.plumbline.record.Order.Item;
import java.util.List;
import java.util.Optional;

/**
 * The order of a case in the attributes of its objects: Patient and General Study modules, Referenced Request Sequence
 * (DICOM PS3.3 C.17.2), Request Attributes Sequence (C.7.3.1, C.24.1), and read back from a report.
 *
 * <p>The frame's values stand; the order fills what the frame leaves blank, and takes the place of what a person said it
 * takes. What the order states and the attributes do not show stands in the parameters of the plan, so nothing is lost.
 */
final class OrderAttributes {
    private static final String IN_HEADER = "inHeader";
    private static final int[] OF_FRAMES_STUDY = {Tag.STUDY_DATE, Tag.STUDY_TIME, Tag.STUDY_ID};

    private OrderAttributes() {}

    /** @param object with patient and study of the frame */
    static void patientAndStudy(DataSet object, Order order) {
        Order.Patient patient = order.patient();
        boolean framesPatient = order.takes(Holder.FRAME, Item.PATIENT_ID, Item.ISSUER_OF_PATIENT_ID);
        if (order.takes(Holder.ORDER, Item.PATIENT_ID, Item.ISSUER_OF_PATIENT_ID)) {
            put(object, Tag.PATIENT_ID, patient.id());
            put(object, Tag.PATIENT_NAME, patient.name());
            put(object, Tag.PATIENT_BIRTH_DATE, patient.birthDate().map(OrderAttributes::date));
            put(object, Tag.PATIENT_SEX, patient.sex());
            object.remove(Tag.ISSUER_OF_PATIENT_ID).remove(Tag.PATIENT_AGE);
            object.remove(Tag.PATIENT_SIZE).remove(Tag.PATIENT_WEIGHT);
            patient.issuerOfId().ifPresent(issuer -> object.put(Tag.ISSUER_OF_PATIENT_ID, issuer));
        } else if (!framesPatient) {
            fill(object, Tag.PATIENT_NAME, patient.name());
            fill(object, Tag.ISSUER_OF_PATIENT_ID, patient.issuerOfId());
            fill(object, Tag.PATIENT_BIRTH_DATE, patient.birthDate().map(OrderAttributes::date));
            fill(object, Tag.PATIENT_SEX, patient.sex());
        }
        if (order.takes(Holder.ORDER, Item.STUDY_INSTANCE_UID)
                && order.studyInstanceUid().isPresent()) {
            object.put(Tag.STUDY_INSTANCE_UID, order.studyInstanceUid().get());
            for (int tag : OF_FRAMES_STUDY) {
                object.putEmpty(tag);
            }
            object.remove(Tag.STUDY_DESCRIPTION);
        }
        if (order.takes(Holder.ORDER, Item.ACCESSION_NUMBER)) {
            put(object, Tag.ACCESSION_NUMBER, order.accessionNumber());
        } else if (!order.takes(Holder.FRAME, Item.ACCESSION_NUMBER)) {
            fill(object, Tag.ACCESSION_NUMBER, order.accessionNumber());
        }
        fill(object, Tag.REFERRING_PHYSICIAN_NAME, order.referringPhysician());
    }

    private static void put(DataSet object, int tag, Optional<String> value) {
        value.ifPresentOrElse(text -> object.put(tag, text), () -> object.putEmpty(tag));
    }

    private static void fill(DataSet object, int tag, Optional<String> value) {
        if (object.string(tag).isEmpty()) {
            value.ifPresent(text -> object.put(tag, text));
        }
    }

    private static String date(String iso) {
        return iso.replace("-", "");
    }

    /** @param report with patient and study */
    static void request(DataSet report, Order order) {
        DataSet item = new DataSet()
                .put(
                        Tag.STUDY_INSTANCE_UID,
                        order.studyInstanceUid()
                                .orElseGet(() ->
                                        report.string(Tag.STUDY_INSTANCE_UID).orElseThrow()))
                .put(Tag.REFERENCED_STUDY_SEQUENCE, List.of())
                .putEmpty(Tag.PLACER_ORDER_NUMBER_IMAGING_SERVICE_REQUEST)
                .putEmpty(Tag.FILLER_ORDER_NUMBER_IMAGING_SERVICE_REQUEST)
                .put(Tag.REQUESTED_PROCEDURE_CODE_SEQUENCE, List.of());
        put(item, Tag.ACCESSION_NUMBER, report.string(Tag.ACCESSION_NUMBER));
        put(item, Tag.REQUESTED_PROCEDURE_ID, order.requested().flatMap(Order.Procedure::id));
        put(item, Tag.REQUESTED_PROCEDURE_DESCRIPTION, order.requested().flatMap(Order.Procedure::description));
        report.put(Tag.REFERENCED_REQUEST_SEQUENCE, List.of(item));
    }

    /** Of a companion whose series can say it. Source: DICOM PS3.3, table 10-9. */
    static void requestAttributes(DataSet companion, Order order) {
        DataSet item = new DataSet();
        order.requested().flatMap(Order.Procedure::id).ifPresent(id -> item.put(Tag.REQUESTED_PROCEDURE_ID, id));
        order.requested()
                .flatMap(Order.Procedure::description)
                .ifPresent(text -> item.put(Tag.REQUESTED_PROCEDURE_DESCRIPTION, text));
        order.scheduled().flatMap(Order.Procedure::id).ifPresent(id -> item.put(Tag.SCHEDULED_PROCEDURE_STEP_ID, id));
        order.scheduled()
                .flatMap(Order.Procedure::description)
                .ifPresent(text -> item.put(Tag.SCHEDULED_PROCEDURE_STEP_DESCRIPTION, text));
        if (!item.tags().isEmpty()) {
            order.studyInstanceUid().ifPresent(uid -> item.put(Tag.STUDY_INSTANCE_UID, uid));
            companion.string(Tag.ACCESSION_NUMBER).ifPresent(number -> item.put(Tag.ACCESSION_NUMBER, number));
            companion.put(Tag.REQUEST_ATTRIBUTES_SEQUENCE, List.of(item));
        }
    }

    /** What the order states beyond the attributes, and the names of what stands there; for the plan's parameters. */
    static Optional<ObjectNode> beyond(RecordSource source) {
        return source.revision().document().context().order().map(order -> {
            DataSet header = new DataSet();
            ObjectHeader.patientAndStudy(header, source);
            request(header, order);
            ObjectNode shown = shown(header);
            ObjectNode stated =
                    (ObjectNode) CaseJson.write(source.revision().document()).get("order");
            ArrayNode names = JsonNodeFactory.instance.arrayNode();
            ObjectNode beyond = rest(stated, shown, "", names);
            if (!names.isEmpty()) {
                beyond.set(IN_HEADER, names);
            }
            return beyond;
        });
    }

    private static ObjectNode rest(JsonNode stated, JsonNode shown, String prefix, ArrayNode names) {
        ObjectNode rest = JsonNodeFactory.instance.objectNode();
        stated.properties().forEach(field -> {
            String name = prefix + field.getKey();
            JsonNode there = shown.path(field.getKey());
            if (field.getValue().isObject()) {
                ObjectNode inner = rest(field.getValue(), there, name + ".", names);
                if (!inner.isEmpty()) {
                    rest.set(field.getKey(), inner);
                }
            } else if (field.getValue().equals(there) && keepsItsForm(there.asText())) {
                names.add(name);
            } else {
                rest.set(field.getKey(), field.getValue());
            }
        });
        return rest;
    }

    /** Spaces around a value and empty components at the end of a name do not survive in DICOM (PS3.5 6.2). */
    private static boolean keepsItsForm(String text) {
        return text.strip().equals(text) && !text.endsWith("^") && !text.endsWith("=");
    }

    /** @param json case document that was read from the report; its order is what {@link #beyond} gave */
    static void restore(DataSet report, ObjectNode json) {
        if (json.get("order") instanceof ObjectNode order) {
            JsonNode names = order.remove(IN_HEADER);
            if (names != null) {
                ObjectNode shown = shown(report);
                names.forEach(name -> put(order, shown, name.asText()));
            }
        }
    }

    private static void put(ObjectNode order, JsonNode shown, String name) {
        int dot = name.indexOf('.');
        if (dot < 0) {
            order.set(name, shown.path(name));
        } else {
            put(
                    order.withObjectProperty(name.substring(0, dot)),
                    shown.path(name.substring(0, dot)),
                    name.substring(dot + 1));
        }
    }

    /** The attributes in the names of the case document. */
    private static ObjectNode shown(DataSet report) {
        ObjectNode shown = JsonNodeFactory.instance.objectNode();
        ObjectNode patient = shown.putObject("patient");
        show(patient, "id", report, Tag.PATIENT_ID);
        show(patient, "issuerOfId", report, Tag.ISSUER_OF_PATIENT_ID);
        show(patient, "name", report, Tag.PATIENT_NAME);
        report.string(Tag.PATIENT_BIRTH_DATE)
                .filter(text -> text.matches("\\d{8}"))
                .ifPresent(text -> patient.put(
                        "birthDate", text.substring(0, 4) + "-" + text.substring(4, 6) + "-" + text.substring(6)));
        show(patient, "sex", report, Tag.PATIENT_SEX);
        show(shown, "referringPhysician", report, Tag.REFERRING_PHYSICIAN_NAME);
        for (DataSet item : report.items(Tag.REFERENCED_REQUEST_SEQUENCE)) {
            show(shown, "accessionNumber", item, Tag.ACCESSION_NUMBER);
            show(shown, "requestedProcedureId", item, Tag.REQUESTED_PROCEDURE_ID);
            show(shown, "requestedProcedureDescription", item, Tag.REQUESTED_PROCEDURE_DESCRIPTION);
            show(shown, "studyInstanceUid", item, Tag.STUDY_INSTANCE_UID);
        }
        return shown;
    }

    private static void show(ObjectNode shown, String name, DataSet from, int tag) {
        from.string(tag).ifPresent(text -> shown.put(name, text));
    }
}
