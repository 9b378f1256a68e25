// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.dicom.ItemValue.Container;
import dev.plumbline.dicom.ItemValue.Template;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** TID 1500 Measurement Report, rows 1 to 9, and the procedure details as an extension at the root. */
final class MeasurementReport {
    static final Template TEMPLATE = new Template("DCMR", "1500");

    private MeasurementReport() {}

    /**
     * The content tree of a record.
     *
     * @throws dev.plumbline.problem.Refusal when the case names a frame that is not held, or a word without a code
     */
    static ContentItem root(RecordSource source, List<FramesUsed.Use> frames) {
        List<ContentItem> drawn = new ArrayList<>();
        List<ContentItem> undrawn = new ArrayList<>();
        groups(source, drawn, undrawn);
        List<ContentItem> children = new ArrayList<>();
        children.add(Language.item(source.installation()));
        children.addAll(Observers.items(source.revision().document(), source.installation()));
        children.add(
                ContentItem.code(Relation.HAS_CONCEPT_MOD, Concepts.PROCEDURE_REPORTED, Concepts.IMAGING_PROCEDURE));
        children.add(ImageLibrary.item(frames, source.revision().document()));
        children.add(ContentItem.container(Concepts.IMAGING_MEASUREMENTS).with(drawn));
        impression(source).ifPresent(children::add);
        children.add(ProcedureDetails.item(source, undrawn));
        return new ContentItem(
                Relation.NONE,
                Optional.of(Concepts.IMAGING_MEASUREMENT_REPORT),
                new Container(Optional.of(TEMPLATE)),
                children);
    }

    /** TID 1500 row 12; not there when empty. */
    private static Optional<ContentItem> impression(RecordSource source) {
        return source.revision()
                .document()
                .bedside()
                .impression()
                .map(text -> ContentItem.container(Concepts.EVALUATIONS)
                        .with(ContentItem.text(Relation.CONTAINS, Concepts.IMPRESSION, text)));
    }

    private static void groups(RecordSource source, List<ContentItem> drawn, List<ContentItem> undrawn) {
        Comparison comparison = source.revision().comparison();
        drawn.add(PlanGroup.of(source));
        for (int i = 0; i < comparison.observations().size(); i++) {
            MeasurementGroup group = ObservationGroup.of(source, i);
            (group.isDrawn() ? drawn : undrawn).add(group.item());
        }
        for (int i = 0; i < comparison.observations().size(); i++) {
            int index = i;
            comparison
                    .observations()
                    .get(i)
                    .carriedPlan()
                    .ifPresent(carried -> drawn.add(CarriedPlanGroup.of(source, index, carried)));
        }
        drawn.addAll(StructureGroups.of(source));
    }
}
