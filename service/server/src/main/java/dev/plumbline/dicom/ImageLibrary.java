// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.ItemValue.Moment;
import dev.plumbline.dicom.ItemValue.Template;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.record.CaseDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** TID 1600 Image Library with one group; TID 1601 and TID 1602 rows 1, 8, 9, 11 and 12 for every frame used. */
final class ImageLibrary {
    private static final Template TEMPLATE = new Template("DCMR", "1600");

    private static final Code ROLE = Codes.own("IMG-ROLE");
    /** Tells a role that the case states from one that follows from what was made on the frame. */
    private static final Code PLACE = Codes.own("FRAME-PLACE");
    /** How many frames the object has, so that a reference to one that does not exist is seen in the report alone. */
    static final Code FRAMES = Codes.own("FRAME-COUNT");

    private ImageLibrary() {}

    /** Puts {@code frames}: those with a role that the case stated, in its order. */
    static void read(ContentItem root, ObjectNode json) {
        Map<Integer, ContentItem> kept = new TreeMap<>();
        root.named(Concepts.IMAGE_LIBRARY)
                .flatMap(library -> library.named(Concepts.IMAGE_LIBRARY_GROUP))
                .flatMap(group -> group.children().stream())
                .forEach(item -> item.first(PLACE)
                        .flatMap(FieldItem::measured)
                        .ifPresent(place -> kept.put((int) place.value(), item)));
        if (!kept.isEmpty()) {
            ArrayNode frames = json.putArray("frames");
            kept.values().forEach(item -> entry(item, frames.addObject()));
        }
    }

    private static void entry(ContentItem item, ObjectNode entry) {
        if (item.value() instanceof ItemValue.Image image) {
            entry.putObject("frame")
                    .put("sopInstanceUid", image.instance().sopInstanceUid())
                    .put("frameNumber", image.instance().frameNumber().orElse(1));
        }
        item.codeOf(ROLE).flatMap(code -> Codes.wordOf("image roles", code)).ifPresent(word -> entry.put("role", word));
    }

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
        context.add(ContentItem.code(Relation.HAS_ACQ_CONTEXT, ROLE, FramesUsed.role(use, document)));
        header.integer(Tag.NUMBER_OF_FRAMES)
                .ifPresent(count -> context.add(Measurement.plain(
                        Relation.HAS_ACQ_CONTEXT, FRAMES, DecimalText.measured(count, Codes.ucum("1")))));
        use.kept()
                .ifPresent(place -> context.add(Measurement.plain(
                        Relation.HAS_ACQ_CONTEXT, PLACE, DecimalText.measured(place + 1, Codes.ucum("1")))));
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
