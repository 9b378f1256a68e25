// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Container;
import dev.plumbline.dicom.ItemValue.Instance;
import dev.plumbline.record.Withdrawal;
import dev.plumbline.record.Withdrawal.Ground;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The note that withdraws a record: Key Object Selection (DICOM PS3.3 A.35.4, TID 2010) whose title says why, over every
 * object of the record. Source: titles PS3.16 CID 7010, modifiers CID 7011; the objects named stay unchanged.
 */
final class RejectionNote {
    private static final Code QUALITY = Codes.dcm("113001");
    private static final Code MODIFIER = Codes.dcm("113011");
    private static final Code DESCRIPTION = Codes.dcm("113012");

    private RejectionNote() {}

    private record Title(Code title, Optional<Code> modifier) {}

    private static Title title(Ground ground) {
        return switch (ground) {
            case WRONG_PATIENT_OR_SIDE -> new Title(Codes.dcm("113037"), Optional.empty());
            case WRONG_WORKLIST_ENTRY -> new Title(Codes.dcm("113038"), Optional.empty());
            case INAPPROPRIATE_PROCESSING -> new Title(QUALITY, Optional.of(Codes.dcm("111219")));
            case OTHER -> new Title(QUALITY, Optional.of(Codes.dcm("111220")));
        };
    }

    /**
     * The note over objects of one study.
     *
     * @param report the report withdrawn
     * @param objects headers of all objects withdrawn, the report among them
     */
    static DataSet of(Withdrawal withdrawal, DataSet report, List<DataSet> objects, Installation installation) {
        Timestamp time = new Timestamp(withdrawal.time());
        ObjectHeader.Kind kind = ObjectHeader.Kind.REJECTION_NOTE;
        ObjectHeader.Origin origin = new ObjectHeader.Origin(
                withdrawal.caseId(), withdrawal.revision(), withdrawal.time(), withdrawal.time(), installation);
        DataSet note = ObjectHeader.of(origin, report, kind, kind.part())
                .put(Tag.REFERENCED_PERFORMED_PROCEDURE_STEP_SEQUENCE, List.of())
                .put(Tag.INSTANCE_NUMBER, Integer.toString(withdrawal.revision()))
                .put(Tag.CONTENT_DATE, time.date())
                .put(Tag.CONTENT_TIME, time.timeOfDay());
        List<DataSet> requests = report.items(Tag.REFERENCED_REQUEST_SEQUENCE);
        if (!requests.isEmpty()) {
            note.put(Tag.REFERENCED_REQUEST_SEQUENCE, requests);
        }
        Evidence.put(note, objects);
        ContentWriter.write(root(withdrawal, objects, installation), note);
        return note;
    }

    private static ContentItem root(Withdrawal withdrawal, List<DataSet> objects, Installation installation) {
        Title title = title(withdrawal.ground());
        List<ContentItem> children = new ArrayList<>();
        title.modifier()
                .ifPresent(modifier -> children.add(ContentItem.code(Relation.HAS_CONCEPT_MOD, MODIFIER, modifier)));
        children.add(Language.withoutCountry());
        children.add(ContentItem.code(Relation.HAS_OBS_CONTEXT, Concepts.OBSERVER_TYPE, Concepts.PERSON));
        children.add(ContentItem.person(Relation.HAS_OBS_CONTEXT, Codes.dcm("121008"), withdrawal.by()));
        Observers.device(children, installation);
        children.add(ContentItem.text(Relation.CONTAINS, DESCRIPTION, withdrawal.text()));
        objects.forEach(object -> children.add(item(object)));
        return new ContentItem(
                Relation.NONE, Optional.of(title.title()), new Container(Optional.of(KeyObjects.TEMPLATE)), children);
    }

    static ContentItem item(DataSet object) {
        Instance instance = new Instance(
                object.string(Tag.SOP_CLASS_UID).orElseThrow(),
                object.string(Tag.SOP_INSTANCE_UID).orElseThrow(),
                OptionalInt.empty());
        boolean image = object.holds(Tag.ROWS);
        return new ContentItem(
                Relation.CONTAINS,
                Optional.empty(),
                image ? new ItemValue.Image(instance) : new ItemValue.Composite(instance),
                List.of());
    }

    /** Why the note withdraws; empty where its title is none of a withdrawal. */
    static Optional<Ground> ground(ContentItem root) {
        return Arrays.stream(Ground.values())
                .filter(ground -> root.isNamed(title(ground).title())
                        && root.codeOf(MODIFIER).equals(title(ground).modifier()))
                .findFirst();
    }

    static Optional<String> text(ContentItem root) {
        return root.textOf(DESCRIPTION);
    }
}
