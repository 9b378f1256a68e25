// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.record.Order;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** The order of a case in JSON: what the worklist stated, and what a person made of differences. */
final class OrderJson {
    private OrderJson() {}

    static Optional<Order> read(Fields document) {
        return document.object("order", CaseObject.ORDER).map(OrderJson::order);
    }

    private static Order order(Fields fields) {
        return new Order(
                fields.objectOr("patient", CaseObject.ORDER_PATIENT, Order.Patient.NOTHING_STATED, OrderJson::patient),
                fields.text("accessionNumber", Wording.SHORT),
                procedure(fields, "requestedProcedureId", "requestedProcedureDescription"),
                procedure(fields, "scheduledProcedureStepId", "scheduledProcedureStepDescription"),
                fields.text("studyInstanceUid", Wording.UID),
                fields.text("referringPhysician", Wording.NAME),
                ContextReader.side(fields, "laterality"),
                resolved(fields));
    }

    private static Order.Patient patient(Fields fields) {
        return new Order.Patient(
                fields.text("id", Wording.NAME),
                fields.text("issuerOfId", Wording.NAME),
                fields.text("name", Wording.NAME),
                fields.text("birthDate", Wording.DATE),
                fields.text("sex", Wording.CODE));
    }

    private static Optional<Order.Procedure> procedure(Fields fields, String id, String description) {
        return Optional.of(new Order.Procedure(fields.text(id, Wording.SHORT), fields.text(description, Wording.NAME)))
                .filter(procedure ->
                        procedure.id().isPresent() || procedure.description().isPresent());
    }

    private static List<Order.Resolution> resolved(Fields fields) {
        Set<Order.Item> seen = EnumSet.noneOf(Order.Item.class);
        return fields.list("resolved", (item, at) -> {
            Order.Resolution resolution = resolution(new Fields(item, at, CaseObject.ORDER_RESOLUTION));
            if (!seen.add(resolution.item())) {
                throw new Refusal(new Problem.InvalidValue(
                        at + "/item", "This difference is resolved twice.", "Resolve each item once."));
            }
            return resolution;
        });
    }

    private static Order.Resolution resolution(Fields fields) {
        Order.Item item = fields.word("item", List.of(Order.Item.values()), Order.Item::word)
                .orElseThrow(() -> fields.missing("item", "what order, frame or case differ in"));
        Order.Holder take = fields.word("take", List.of(Order.Holder.values()), Order.Holder::word)
                .orElseThrow(() -> fields.missing("take", "whose value holds"));
        if (!item.holders().contains(take)) {
            throw new Refusal(new Problem.InvalidValue(
                    fields.pointer("take"),
                    "The " + item.word() + " cannot be taken from there.",
                    item == Order.Item.LATERALITY
                            ? "Give case, and say the side that holds in /context/laterality."
                            : "Give "
                                    + item.holders().stream()
                                            .map(Order.Holder::word)
                                            .collect(Collectors.joining(" or "))
                                    + "."));
        }
        return new Order.Resolution(
                item, take, fields.needText("by", Wording.NAME), fields.needText("reason", Wording.REMARK));
    }

    static ObjectNode write(Order order) {
        Order.Patient patient = order.patient();
        return new Stated()
                .putObject(
                        "patient",
                        new Stated()
                                .putText("id", patient.id())
                                .putText("issuerOfId", patient.issuerOfId())
                                .putText("name", patient.name())
                                .putText("birthDate", patient.birthDate())
                                .putText("sex", patient.sex())
                                .node())
                .putText("accessionNumber", order.accessionNumber())
                .putText("requestedProcedureId", order.requested().flatMap(Order.Procedure::id))
                .putText("requestedProcedureDescription", order.requested().flatMap(Order.Procedure::description))
                .putText("scheduledProcedureStepId", order.scheduled().flatMap(Order.Procedure::id))
                .putText("scheduledProcedureStepDescription", order.scheduled().flatMap(Order.Procedure::description))
                .putText("studyInstanceUid", order.studyInstanceUid())
                .putText("referringPhysician", order.referringPhysician())
                .putText("laterality", order.laterality().map(Laterality::word))
                .putObjects(
                        "resolved",
                        order.resolved(),
                        resolution -> new Stated()
                                .put("item", resolution.item().word())
                                .put("take", resolution.take().word())
                                .put("by", resolution.by())
                                .put("reason", resolution.reason())
                                .node())
                .node();
    }
}
