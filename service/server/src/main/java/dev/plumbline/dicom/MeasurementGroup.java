// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Container;
import dev.plumbline.dicom.ItemValue.Template;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * TID 1501 Measurement Group, rows 1 to 10, with the private items of the extension between rows 9 and 10: put together in
 * the order of the template, which viewers and the check expect.
 *
 * <p>Nothing spatial stands directly in a group: viewers would draw only that one, with the group's numbers as its label.
 */
final class MeasurementGroup {
    private static final Template TEMPLATE = new Template("DCMR", "1501");

    private final List<ContentItem> items = new ArrayList<>();
    private final List<ContentItem> thin = new ArrayList<>();
    private final List<ContentItem> rich = new ArrayList<>();
    private final List<ContentItem> comments = new ArrayList<>();

    /** @param method how its numbers came about, row 5 */
    MeasurementGroup(String label, String trackingUid, Code finding, Code method) {
        items.add(ContentItem.text(Relation.HAS_OBS_CONTEXT, Concepts.TRACKING_IDENTIFIER, label));
        items.add(ContentItem.uid(Relation.HAS_OBS_CONTEXT, Concepts.TRACKING_UID, trackingUid));
        items.add(ContentItem.code(Relation.CONTAINS, Concepts.FINDING, finding));
        items.add(ContentItem.code(Relation.HAS_CONCEPT_MOD, Concepts.MEASUREMENT_METHOD, method));
    }

    MeasurementGroup add(ContentItem item) {
        items.add(item);
        return this;
    }

    MeasurementGroup addAll(List<ContentItem> more) {
        items.addAll(more);
        return this;
    }

    MeasurementGroup says(String concept, Code value) {
        return add(ContentItem.code(Relation.CONTAINS, Codes.own(concept), value));
    }

    /** A number that viewers show, and its twin that says exactly what it is where no other rich number does. */
    MeasurementGroup thin(ContentItem number) {
        thin.add(number);
        return this;
    }

    MeasurementGroup rich(ContentItem number) {
        rich.add(number);
        return this;
    }

    /** A label of at most 16 characters, so that a viewer's edge cuts none. */
    MeasurementGroup comment(String text) {
        comments.add(ContentItem.text(Relation.CONTAINS, Concepts.COMMENT, text));
        return this;
    }

    boolean isDrawn() {
        return !thin.isEmpty();
    }

    /** The group; one with nothing to draw is a group of another name, which stands among the procedure details. */
    ContentItem item() {
        List<ContentItem> all = new ArrayList<>(items);
        all.addAll(thin);
        all.addAll(rich);
        all.addAll(comments);
        ContentItem group = isDrawn()
                ? ContentItem.container(Concepts.MEASUREMENT_GROUP, TEMPLATE)
                : new ContentItem(
                        Relation.CONTAINS,
                        Optional.of(Concepts.UNDRAWN_GROUP),
                        new Container(Optional.empty()),
                        List.of());
        return group.with(all);
    }
}
