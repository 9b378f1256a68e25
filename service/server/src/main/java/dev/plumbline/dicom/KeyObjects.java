// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Container;
import dev.plumbline.dicom.ItemValue.Instance;
import dev.plumbline.dicom.ItemValue.Template;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * Key Object Selection, DICOM PS3.3 A.35.4 and TID 2010: the frames that matter with what each shows, and the objects that
 * this record consists of.
 */
final class KeyObjects {
    static final Template TEMPLATE = new Template("DCMR", "2010");
    private static final Code TITLE = Codes.dcm("113020");
    private static final Code DESCRIPTION = Codes.dcm("113012");

    private KeyObjects() {}

    /** @param made the other objects of the record, whole data sets */
    static DataSet of(RecordSource source, List<FramesUsed.Use> used, List<DataSet> made) {
        Timestamp time = new Timestamp(source.revision().time());
        DataSet selection = ObjectHeader.of(source, ObjectHeader.Kind.KEY_OBJECTS, ObjectHeader.Kind.KEY_OBJECTS.part())
                .put(Tag.REFERENCED_PERFORMED_PROCEDURE_STEP_SEQUENCE, List.of())
                .put(Tag.INSTANCE_NUMBER, Integer.toString(source.revision().revision()))
                .put(Tag.CONTENT_DATE, time.date())
                .put(Tag.CONTENT_TIME, time.timeOfDay());
        DocumentHeader.order(selection, source);
        Stream<DataSet> frames = used.stream().map(use -> use.placed().frame().header());
        Evidence.put(selection, Stream.concat(frames, made.stream()).toList());
        ObjectHeader.codingSchemes(selection);
        ContentWriter.write(root(source, used, made), selection);
        return selection;
    }

    private static ContentItem root(RecordSource source, List<FramesUsed.Use> used, List<DataSet> made) {
        List<ContentItem> children = new ArrayList<>();
        children.add(Language.withoutCountry());
        children.addAll(Observers.items(source.revision().document(), source.installation()));
        children.add(ContentItem.text(Relation.CONTAINS, DESCRIPTION, description(source, used)));
        used.forEach(use -> children.add(item(new ItemValue.Image(use.placed().instance()))));
        for (DataSet object : made) {
            Instance instance = new Instance(
                    object.string(Tag.SOP_CLASS_UID).orElseThrow(),
                    object.string(Tag.SOP_INSTANCE_UID).orElseThrow(),
                    OptionalInt.empty());
            boolean image = object.holds(Tag.PIXEL_DATA);
            children.add(item(image ? new ItemValue.Image(instance) : new ItemValue.Composite(instance)));
        }
        return new ContentItem(Relation.NONE, Optional.of(TITLE), new Container(Optional.of(TEMPLATE)), children);
    }

    private static ContentItem item(ItemValue value) {
        return new ContentItem(Relation.CONTAINS, Optional.empty(), value, List.of());
    }

    /** What each frame shows, in the order in which the frames stand below. */
    private static String description(RecordSource source, List<FramesUsed.Use> used) {
        StringBuilder text = new StringBuilder("Frames of the needle path record, in this order.");
        for (int i = 0; i < used.size(); i++) {
            FramesUsed.Use use = used.get(i);
            text.append(' ').append(i + 1);
            use.placed()
                    .instance()
                    .frameNumber()
                    .ifPresent(frame -> text.append(" (frame ").append(frame).append(')'));
            text.append(": ")
                    .append(FramesUsed.role(use, source.revision().document()).meaning())
                    .append('.');
        }
        return text.append(" Then what was made of them.").toString();
    }
}
