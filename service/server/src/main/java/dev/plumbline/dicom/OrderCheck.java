// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Order;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The order of a case held against the frame and the case itself. What differs stops everything until a person has said
 * which holds: a wrong order chosen from a list is how a record comes to stand with another patient.
 */
public final class OrderCheck {
    private OrderCheck() {}

    /**
     * Requires that they agree, or that every difference is resolved.
     *
     * @param frame header of the frame that the case names
     * @throws Refusal {@link Problem.OrderMismatch}
     */
    public static void require(CaseDocument document, DataSet frame) {
        document.context().order().ifPresent(order -> {
            List<String> open = differences(order, document, frame).stream()
                    .filter(item -> !order.resolves(item))
                    .map(Order.Item::word)
                    .toList();
            if (!open.isEmpty()) {
                throw new Refusal(new Problem.OrderMismatch(open));
            }
        });
    }

    private static Set<Order.Item> differences(Order order, CaseDocument document, DataSet frame) {
        Set<Order.Item> items = EnumSet.noneOf(Order.Item.class);
        // A frame without a patient contradicts an order with one: whose frame it is has to be said.
        if (differ(
                order.patient().id(),
                Optional.of(CurrentForm.value(frame, Tag.PATIENT_ID).orElse("")))) {
            items.add(Order.Item.PATIENT_ID);
        }
        if (differ(order.patient().issuerOfId(), CurrentForm.value(frame, Tag.ISSUER_OF_PATIENT_ID))) {
            items.add(Order.Item.ISSUER_OF_PATIENT_ID);
        }
        if (differ(order.studyInstanceUid(), frame.string(Tag.STUDY_INSTANCE_UID))) {
            items.add(Order.Item.STUDY_INSTANCE_UID);
        }
        if (differ(order.accessionNumber(), CurrentForm.value(frame, Tag.ACCESSION_NUMBER))) {
            items.add(Order.Item.ACCESSION_NUMBER);
        }
        Optional<String> side = order.laterality().map(Laterality::word);
        if (differ(side, document.context().laterality().map(Laterality::word))
                || differ(side, ImageIdentity.side(frame).map(Laterality::word))) {
            items.add(Order.Item.LATERALITY);
        }
        return items;
    }

    /** Both stated, and not the same; spaces around a value are none of it (DICOM PS3.5 6.2). */
    private static boolean differ(Optional<String> one, Optional<String> other) {
        return one.isPresent()
                && other.isPresent()
                && !one.get().strip().equals(other.get().strip());
    }
}
