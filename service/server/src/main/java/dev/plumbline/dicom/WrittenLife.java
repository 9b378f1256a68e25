// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Composite;
import dev.plumbline.record.Amendment;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Signature;
import dev.plumbline.record.Withdrawal.Ground;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Where in the life of a record an object stands, as the object itself tells. */
public final class WrittenLife {
    private static final Pattern AMENDMENT =
            Pattern.compile("Amendment \\d+: (.*?)" + Pattern.quote(Amendment.CHANGED) + "(.*)", Pattern.DOTALL);

    /** SOP classes of the objects that tell of it. */
    public static final List<String> CLASSES =
            List.of(ObjectHeader.Kind.REPORT.sopClassUid(), ObjectHeader.Kind.REJECTION_NOTE.sopClassUid());

    private WrittenLife() {}

    /**
     * A signed report.
     *
     * @param predecessor UID of the report that it replaces
     * @param reason why it does, empty where it replaces none
     * @param changed what is different
     */
    public record Report(
            int revision,
            OffsetDateTime time,
            CaseDocument document,
            Optional<String> predecessor,
            String reason,
            String changed) {}

    /**
     * A rejection note.
     *
     * @param named UIDs of the objects that are no images, in the note's order
     */
    public record Note(int revision, OffsetDateTime time, Ground ground, String text, String by, List<String> named) {
        public Note {
            named = List.copyOf(named);
        }
    }

    /** A signed report of this program; empty for every other object. */
    public static Optional<Report> report(DataSet object) {
        if (!isOf(object, ObjectHeader.Kind.REPORT)
                || object.items(Tag.VERIFYING_OBSERVER_SEQUENCE).isEmpty()) {
            return Optional.empty();
        }
        ContentItem root = ContentReader.read(object);
        if (root.first(Concepts.PROCEDURE).isEmpty()) {
            return Optional.empty();
        }
        CaseDocument document = RecordReader.read(object);
        Optional<String> predecessor = predecessor(object);
        Matcher words = AMENDMENT.matcher(Evaluations.amendment(root).orElse(""));
        boolean told = predecessor.isPresent() && words.matches();
        return document.signature()
                .map(Signature::time)
                .map(time -> new Report(
                        number(object),
                        time,
                        document,
                        predecessor,
                        told ? words.group(1) : "",
                        told ? words.group(2) : ""));
    }

    /** A note that withdraws something; empty for every other object. */
    public static Optional<Note> note(DataSet object) {
        if (!isOf(object, ObjectHeader.Kind.REJECTION_NOTE)) {
            return Optional.empty();
        }
        ContentItem root = ContentReader.read(object);
        String by = root.first(Codes.dcm("121008"))
                .flatMap(item ->
                        item.value() instanceof ItemValue.Person person ? Optional.of(person.name()) : Optional.empty())
                .orElse("");
        List<String> named = root.children().stream()
                .flatMap(item -> item.value() instanceof Composite composite
                        ? java.util.stream.Stream.of(composite.instance().sopInstanceUid())
                        : java.util.stream.Stream.of())
                .toList();
        return RejectionNote.ground(root)
                .flatMap(ground -> time(object)
                        .map(time -> new Note(
                                number(object),
                                time,
                                ground,
                                RejectionNote.text(root).orElse(""),
                                by,
                                named)));
    }

    /** When the series of an object began, by what the object says. */
    public static Optional<OffsetDateTime> begun(DataSet object) {
        return moment(object, Tag.SERIES_DATE, Tag.SERIES_TIME);
    }

    static Optional<String> predecessor(DataSet report) {
        return report.items(Tag.PREDECESSOR_DOCUMENTS_SEQUENCE).stream()
                .flatMap(study -> study.items(Tag.REFERENCED_SERIES_SEQUENCE).stream())
                .flatMap(series -> series.items(Tag.REFERENCED_SOP_SEQUENCE).stream())
                .flatMap(instance -> instance.string(Tag.REFERENCED_SOP_INSTANCE_UID).stream())
                .findFirst();
    }

    private static boolean isOf(DataSet object, ObjectHeader.Kind kind) {
        return object.string(Tag.SOP_CLASS_UID)
                .filter(kind.sopClassUid()::equals)
                .isPresent();
    }

    private static int number(DataSet object) {
        return object.integer(Tag.INSTANCE_NUMBER).orElse(1);
    }

    private static Optional<OffsetDateTime> time(DataSet object) {
        return moment(object, Tag.CONTENT_DATE, Tag.CONTENT_TIME);
    }

    private static Optional<OffsetDateTime> moment(DataSet object, int date, int time) {
        try {
            ZoneOffset zone = object.string(Tag.TIMEZONE_OFFSET_FROM_UTC)
                    .map(ZoneOffset::of)
                    .orElse(ZoneOffset.UTC);
            return object.string(date)
                    .flatMap(day -> object.string(time).map(clock -> Timestamp.parse(day + clock, zone)));
        } catch (DateTimeException e) {
            throw Fault.malformed("The date and time of the object cannot be read");
        }
    }
}
