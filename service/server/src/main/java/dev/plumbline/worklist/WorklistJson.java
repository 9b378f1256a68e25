// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.worklist;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A day's worklist as the doors show it. */
public final class WorklistJson {
    private WorklistJson() {}

    /** Null where the worklist states nothing. */
    public static ObjectNode of(Worklist.Day day) {
        ObjectNode answer = JsonNodeFactory.instance
                .objectNode()
                .put("date", day.date().toString())
                .put("source", day.source());
        ArrayNode items = answer.putArray("items");
        day.procedures().forEach(procedure -> item(items.addObject(), procedure));
        day.unreadable().ifPresent(words -> answer.put("text", words));
        return answer;
    }

    /** Where no worklist is configured: nobody was asked, so that no item is not the same as an empty day. */
    public static ObjectNode none(Optional<LocalDate> date) {
        ObjectNode answer = JsonNodeFactory.instance
                .objectNode()
                .put("date", date.map(LocalDate::toString).orElse(null))
                .putNull("source");
        answer.putArray("items");
        return answer.put(
                "text", "No worklist is configured: name a peer with \"uses\": [\"worklist\"] in the configuration.");
    }

    private static void item(ObjectNode item, ScheduledProcedure procedure) {
        ScheduledProcedure.Person patient = procedure.patient();
        item.set("order", order(procedure));
        item.putObject("patient")
                .put("name", text(patient.name()))
                .put("id", text(patient.id()))
                .put("issuerOfId", text(patient.issuerOfId()))
                .put("birthDate", date(patient.birthDate()))
                .put("sex", text(patient.sex()));
        ScheduledProcedure.Order order = procedure.order();
        item.put("accessionNumber", text(order.accessionNumber()))
                .put("requestedProcedureId", text(order.requestedProcedureId()))
                .put("requestedProcedureDescription", text(order.description()))
                .put("studyInstanceUid", text(order.studyInstanceUid()))
                .put("referringPhysician", text(order.referringPhysician()));
        ScheduledProcedure.Step step = procedure.step();
        item.put("scheduledProcedureStepId", text(step.id()))
                .put("scheduledProcedureStepDescription", text(step.description()))
                .put("startDate", date(step.date()))
                .put("startTime", time(step.time()))
                .put("modality", text(step.modality()))
                .put("stationAeTitle", text(step.stationAeTitle()));
        ArrayNode unreadable = item.putArray("unreadable");
        procedure.unreadable().forEach(unreadable::add);
    }

    /** As the case document takes it; what the worklist does not state is left out. */
    private static ObjectNode order(ScheduledProcedure procedure) {
        ObjectNode order = JsonNodeFactory.instance.objectNode();
        ScheduledProcedure.Person patient = procedure.patient();
        ObjectNode person = JsonNodeFactory.instance.objectNode();
        state(person, "id", patient.id());
        state(person, "issuerOfId", patient.issuerOfId());
        state(person, "name", patient.name());
        state(person, "birthDate", date(patient.birthDate()));
        state(person, "sex", patient.sex());
        if (!person.isEmpty()) {
            order.set("patient", person);
        }
        state(order, "accessionNumber", procedure.order().accessionNumber());
        state(order, "requestedProcedureId", procedure.order().requestedProcedureId());
        state(order, "requestedProcedureDescription", procedure.order().description());
        state(order, "scheduledProcedureStepId", procedure.step().id());
        state(order, "scheduledProcedureStepDescription", procedure.step().description());
        state(order, "studyInstanceUid", procedure.order().studyInstanceUid());
        state(order, "referringPhysician", procedure.order().referringPhysician());
        return order;
    }

    private static void state(ObjectNode node, String name, @Nullable String value) {
        if (value != null && !value.isEmpty()) {
            node.put(name, value);
        }
    }

    private static @Nullable String text(String value) {
        return value.isEmpty() ? null : value;
    }

    /** A whole DICOM date in ISO 8601; as it is where it is none. */
    private static @Nullable String date(String value) {
        return text(value.replaceFirst("^(\\d{4})(\\d{2})(\\d{2})$", "$1-$2-$3"));
    }

    /** Hours and minutes, seconds where stated; as it is where it is no time. */
    private static @Nullable String time(String value) {
        return text(value.replaceFirst("^(\\d{2})(\\d{2})(\\d{2})?(\\.\\d+)?$", "$1:$2:$3")
                .replaceFirst(":$", ""));
    }
}
