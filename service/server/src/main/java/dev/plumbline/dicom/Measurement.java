// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Measured;
import dev.plumbline.dicom.ItemValue.Numeric;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Reason;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * TID 300 Measurement, rows 1 to 4 and 8 (TID 310 row 5) and 14 (TID 320): a number with its exact meaning, its expanded
 * uncertainty and the marks it was taken from.
 *
 * <p>A <em>rich</em> number has the exact quantity under it, so that it never has a single child. A <em>thin</em> one has
 * exactly one child, the coordinates of what is drawn, because viewers show only such numbers; it repeats a rich one.
 */
final class Measurement {
    private Measurement() {}

    /** The number of a reading, or the reason why there is none; the marks stand under it either way. */
    static ContentItem rich(Quantity quantity, Reading reading, List<ContentItem> marks) {
        return reading.fold(
                seen -> rich(quantity, seen, marks), notSeen -> withoutValue(quantity, notSeen.reason(), marks));
    }

    private static ContentItem rich(Quantity quantity, Reading.Seen seen, List<ContentItem> marks) {
        List<ContentItem> children = meaning(quantity);
        derivation(quantity).ifPresent(children::add);
        children.add(uncertainty(seen.expandedUncertainty(), quantity.unit()));
        children.addAll(marks);
        return number(quantity, DecimalText.measured(seen.value(), quantity.unit()))
                .with(children);
    }

    /** A number read off the drawing itself, without an uncertainty of its own. */
    static ContentItem drawn(Quantity quantity, double value, List<ContentItem> marks) {
        List<ContentItem> children = meaning(quantity);
        children.addAll(marks);
        return number(quantity, DecimalText.measured(value, quantity.unit())).with(children);
    }

    private static ContentItem withoutValue(Quantity quantity, Reason reason, List<ContentItem> marks) {
        Code why = Codes.ofWord("reasons", reason.word());
        String qualifier =
                Codes.entry(why.scheme(), why.value()).text("qualifier").orElseThrow();
        List<ContentItem> children = meaning(quantity);
        children.add(ContentItem.code(Relation.HAS_CONCEPT_MOD, Concepts.WHY_ABSENT, why));
        derivation(quantity).ifPresent(children::add);
        children.addAll(marks);
        Numeric none = new Numeric(Optional.empty(), Optional.of(Codes.named(qualifier)));
        return ContentItem.of(Relation.CONTAINS, quantity.concept(), none).with(children);
    }

    /** @param coordinates what is drawn: one item with one image under it */
    static ContentItem thin(Code concept, Measured value, ContentItem coordinates) {
        return ContentItem.of(Relation.CONTAINS, concept, new Numeric(Optional.of(value), Optional.empty()))
                .with(coordinates);
    }

    /** A bare number of the image library or the procedure details. */
    static ContentItem plain(Relation relation, Code concept, Measured value) {
        return ContentItem.of(relation, concept, new Numeric(Optional.of(value), Optional.empty()));
    }

    private static ContentItem number(Quantity quantity, Measured value) {
        return ContentItem.of(Relation.CONTAINS, quantity.concept(), new Numeric(Optional.of(value), Optional.empty()));
    }

    private static List<ContentItem> meaning(Quantity quantity) {
        List<ContentItem> children = new ArrayList<>();
        children.add(ContentItem.code(Relation.HAS_CONCEPT_MOD, Concepts.EQUIVALENT_MEANING, quantity.code()));
        return children;
    }

    private static Optional<ContentItem> derivation(Quantity quantity) {
        return quantity.isDeviation()
                ? Optional.of(ContentItem.code(Relation.HAS_CONCEPT_MOD, Concepts.DERIVATION, Codes.own("DV-OMP")))
                : Optional.empty();
    }

    private static ContentItem uncertainty(double expanded, Code unit) {
        Measured factor = DecimalText.measured(Reading.COVERAGE_FACTOR, Codes.ucum("1"));
        return plain(Relation.HAS_PROPERTIES, Concepts.UNCERTAINTY, DecimalText.measured(expanded, unit))
                .with(plain(Relation.HAS_PROPERTIES, Concepts.COVERAGE_FACTOR, factor));
    }
}
