// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Coded;
import dev.plumbline.dicom.ItemValue.Measured;
import dev.plumbline.dicom.ItemValue.Numeric;
import dev.plumbline.readout.PersonName;
import dev.plumbline.readout.Readout;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a record says to people: whose it is, what was planned, what was observed, how they differ, and the cautions. */
public final class RecordReadout {
    private static final Code CAUTIONS = Codes.own("CAUTIONS");

    private final DataSet report;
    private final ContentItem root;
    private final ReadoutWords words;

    private RecordReadout(DataSet report) {
        this.report = report;
        root = ContentReader.read(report);
        words = ReadoutWords.of(report);
    }

    /**
     * The record in words.
     *
     * @throws dev.plumbline.problem.Refusal when the object has no content tree
     */
    public static Readout of(DataSet report) {
        return new RecordReadout(report).readout();
    }

    private Readout readout() {
        List<Readout.Section> sections = new ArrayList<>();
        RecordReader.groups(root).forEach(group -> sections.add(section(group)));
        Optional<ContentItem> details = root.first(Concepts.PROCEDURE);
        root.first(Concepts.EVALUATIONS)
                .flatMap(evaluations -> evaluations.textOf(Concepts.IMPRESSION))
                .ifPresent(text -> sections.add(new Readout.Section(
                        Concepts.IMPRESSION.meaning(), List.of(new Readout.Line("As written", text)))));
        details.ifPresent(item -> sections.add(details(item)));
        details.ifPresent(item -> sections.addAll(BedsideReadout.sections(item, words)));
        return new Readout(
                root.name().map(Code::meaning).orElse("Structured report"),
                state(),
                head(),
                sections,
                details.flatMap(item -> item.textOf(CAUTIONS)).orElse(""),
                report.string(Tag.SOP_INSTANCE_UID).orElse(""));
    }

    private List<Readout.Line> head() {
        List<Readout.Line> head = new ArrayList<>();
        head.add(new Readout.Line(
                "Patient",
                joined(List.of(
                        report.string(Tag.PATIENT_NAME).map(PersonName::words), report.string(Tag.PATIENT_ID)))));
        head.add(new Readout.Line(
                "Study",
                joined(List.of(
                        report.string(Tag.STUDY_DATE).map(ReadoutWords::day), report.string(Tag.ACCESSION_NUMBER)))));
        head.add(new Readout.Line(
                "Record made",
                joined(List.of(
                        report.string(Tag.CONTENT_DATE).map(ReadoutWords::day),
                        report.string(Tag.CONTENT_TIME).map(ReadoutWords::time),
                        report.string(Tag.TIMEZONE_OFFSET_FROM_UTC)
                                .map(offset -> "(" + ReadoutWords.zone(offset) + ", as all times here)")))));
        for (DataSet verifier : report.items(Tag.VERIFYING_OBSERVER_SEQUENCE)) {
            head.add(new Readout.Line(
                    "Signed by",
                    joined(List.of(
                            verifier.string(Tag.VERIFYING_OBSERVER_NAME).map(PersonName::words),
                            verifier.string(Tag.VERIFYING_ORGANIZATION)))));
        }
        Evaluations.amendment(root).ifPresent(text -> head.add(new Readout.Line("Amended", text)));
        return head;
    }

    private String state() {
        return report.string(Tag.VERIFICATION_FLAG).filter("VERIFIED"::equals).isPresent()
                ? "signed"
                : "draft, not signed";
    }

    private static String joined(List<Optional<String>> parts) {
        String said = parts.stream().flatMap(Optional::stream).collect(Collectors.joining("  "));
        return said.isEmpty() ? "not stated" : said;
    }

    private Readout.Section section(ReadGroup group) {
        List<Readout.Line> lines = new ArrayList<>();
        for (ContentItem item : group.item().children()) {
            if (item.relation() == Relation.CONTAINS
                    && !item.isNamed(Concepts.FINDING)
                    && !item.isNamed(Concepts.COMMENT)) {
                words(item).ifPresent(value -> lines.add(new Readout.Line(name(item), value)));
            }
        }
        group.richNumbers()
                .forEach(number -> lines.add(new Readout.Line(
                        number.codeOf(Concepts.EQUIVALENT_MEANING)
                                .map(Code::meaning)
                                .orElse(""),
                        measured(number))));
        String finding =
                group.item().codeOf(Concepts.FINDING).map(Code::meaning).orElse("no finding");
        return new Readout.Section(group.label() + ": " + finding, lines);
    }

    private static String name(ContentItem item) {
        return ReadoutWords.name(item);
    }

    /** Codes, texts and names, with what stands under them in brackets; nothing for marks, references and times alone. */
    private Optional<String> words(ContentItem item) {
        boolean tells = item.value() instanceof Coded
                || item.value() instanceof ItemValue.Text
                || item.value() instanceof ItemValue.Person
                || (item.value() instanceof ItemValue.Moment moment
                        && moment.valueType().equals("DATETIME"))
                || (item.value() instanceof Numeric numeric
                        && item.children().isEmpty()
                        && numeric.measured().isPresent());
        if (!tells) {
            return Optional.empty();
        }
        String under = item.children().stream()
                .flatMap(child -> words(child).map(w -> name(child) + ": " + w).stream())
                .collect(Collectors.joining(", "));
        return Optional.of(under.isEmpty() ? words.said(item) : words.said(item) + " (" + under + ")");
    }

    /** Such as {@code 33.7 deg ± 0.8 (k = 2)}, or the reason why there is no value. */
    private static String measured(ContentItem number) {
        Optional<Measured> measured = ((Numeric) number.value()).measured();
        if (measured.isEmpty()) {
            String why = number.codeOf(Concepts.WHY_ABSENT).map(Code::meaning).orElse("no reason given");
            return "no value: " + why.toLowerCase(Locale.ROOT);
        }
        String unit = measured.get().unit().meaning();
        String value = tenths(measured.get().value()) + " " + unit;
        return number.first(Concepts.UNCERTAINTY)
                .flatMap(item -> item.value() instanceof Numeric u ? u.measured() : Optional.empty())
                .map(u -> value + (u.value() == 0 ? ", exact" : " ± " + tenths(u.value()) + " (k = 2)"))
                .orElse(value);
    }

    private static String tenths(double value) {
        String text = String.format(Locale.ROOT, "%.1f", value);
        return text.equals("-0.0") ? "0.0" : text;
    }

    private Readout.Section details(ContentItem details) {
        List<Readout.Line> lines = new ArrayList<>();
        for (ContentItem item : details.children()) {
            if (!item.isNamed(CAUTIONS) && !BedsideReadout.tells(item)) {
                number(item).or(() -> words(item)).ifPresent(value -> lines.add(new Readout.Line(name(item), value)));
            }
        }
        return new Readout.Section(name(details), lines);
    }

    /** A figure of the log that is not known says why. */
    private static Optional<String> number(ContentItem item) {
        return item.value() instanceof Numeric numeric && numeric.measured().isEmpty()
                ? Optional.of(measured(item))
                : Optional.empty();
    }
}
