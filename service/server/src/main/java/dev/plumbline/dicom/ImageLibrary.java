// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Moment;
import dev.plumbline.dicom.ItemValue.Template;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.record.CaseDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** TID 1600 Image Library with one group; TID 1601 and TID 1602 rows 1, 8, 9, 11 and 12 for every frame used. */
final class ImageLibrary {
    private static final Template TEMPLATE = new Template("DCMR", "1600");

    private ImageLibrary() {}

    static ContentItem item(List<FramesUsed.Use> frames, CaseDocument document) {
        List<ContentItem> entries = new ArrayList<>();
        entries.add(ContentItem.code(Relation.HAS_ACQ_CONTEXT, Codes.dcm("121139"), Codes.dcm("US")));
        frames.forEach(use -> entries.add(image(use, document)));
        return ContentItem.container(Concepts.IMAGE_LIBRARY, TEMPLATE)
                .with(ContentItem.container(Concepts.IMAGE_LIBRARY_GROUP).with(entries));
    }

    private static ContentItem image(FramesUsed.Use use, CaseDocument document) {
        DataSet header = use.placed().frame().header();
        FrameGeometry geometry = use.placed().frame().geometry();
        List<ContentItem> context = new ArrayList<>();
        moment(
                context,
                "126201",
                new Moment(
                        "DATE", CurrentForm.value(header, Tag.ACQUISITION_DATE).orElse("")));
        moment(
                context,
                "126202",
                new Moment(
                        "TIME", CurrentForm.value(header, Tag.ACQUISITION_TIME).orElse("")));
        context.add(pixels("110910", geometry.rows()));
        context.add(pixels("110911", geometry.columns()));
        context.add(ContentItem.code(Relation.HAS_ACQ_CONTEXT, Codes.own("IMG-ROLE"), FramesUsed.role(use, document)));
        return new ContentItem(
                Relation.CONTAINS,
                Optional.empty(),
                new ItemValue.Image(use.placed().instance()),
                context);
    }

    private static void moment(List<ContentItem> context, String concept, Moment moment) {
        if (!moment.text().isEmpty()) {
            context.add(ContentItem.of(Relation.HAS_ACQ_CONTEXT, Codes.dcm(concept), moment));
        }
    }

    private static ContentItem pixels(String concept, int count) {
        return Measurement.plain(
                Relation.HAS_ACQ_CONTEXT, Codes.dcm(concept), DecimalText.measured(count, Codes.ucum("{pixels}")));
    }
}
