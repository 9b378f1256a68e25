// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Coded;
import dev.plumbline.dicom.ItemValue.Measured;
import dev.plumbline.dicom.ItemValue.Numeric;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A record as plain text for people: whose it is, what was planned, what was observed, how they differ, and the cautions. */
public final class RecordText {
    private static final int WIDTH = 56;

    private final DataSet report;
    private final ContentItem root;
    private final List<String> lines = new ArrayList<>();

    private RecordText(DataSet report) {
        this.report = report;
        root = ContentReader.read(report);
    }

    /**
     * The text, lines ended by a line feed.
     *
     * @throws dev.plumbline.problem.Refusal when the object has no content tree
     */
    public static String of(DataSet report) {
        return new RecordText(report).text();
    }

    private String text() {
        head();
        RecordReader.groups(root).forEach(this::group);
        root.first(Concepts.PROCEDURE).ifPresent(this::details);
        return String.join("\n", lines) + "\n";
    }

    private void head() {
        lines.add(root.name().map(Code::meaning).orElse("Structured report") + ", " + state());
        line(0, "Patient", joined(report, Tag.PATIENT_NAME, Tag.PATIENT_ID));
        line(0, "Study", joined(report, Tag.STUDY_DATE, Tag.ACCESSION_NUMBER));
        line(0, "Record made", joined(report, Tag.CONTENT_DATE, Tag.CONTENT_TIME, Tag.TIMEZONE_OFFSET_FROM_UTC));
        for (DataSet verifier : report.items(Tag.VERIFYING_OBSERVER_SEQUENCE)) {
            line(0, "Signed by", joined(verifier, Tag.VERIFYING_OBSERVER_NAME, Tag.VERIFYING_ORGANIZATION));
        }
    }

    private String state() {
        return report.string(Tag.VERIFICATION_FLAG).filter("VERIFIED"::equals).isPresent()
                ? "signed"
                : "draft, not signed";
    }

    private static String joined(DataSet dataSet, int... tags) {
        List<String> values = new ArrayList<>();
        for (int tag : tags) {
            dataSet.string(tag).ifPresent(values::add);
        }
        return values.isEmpty() ? "not stated" : String.join("  ", values);
    }

    private void line(int indent, String name, String value) {
        lines.add(String.format(Locale.ROOT, "%s%-" + (WIDTH - indent) + "s %s", " ".repeat(indent), name, value));
    }

    private void group(ReadGroup group) {
        lines.add("");
        String finding =
                group.item().codeOf(Concepts.FINDING).map(Code::meaning).orElse("no finding");
        lines.add(group.label() + ": " + finding);
        for (ContentItem item : group.item().children()) {
            if (item.relation() == Relation.CONTAINS
                    && !item.isNamed(Concepts.FINDING)
                    && !item.isNamed(Concepts.COMMENT)) {
                words(item).ifPresent(value -> line(2, name(item), value));
            }
        }
        group.richNumbers()
                .forEach(number -> line(
                        2,
                        number.codeOf(Concepts.EQUIVALENT_MEANING)
                                .map(Code::meaning)
                                .orElse(""),
                        measured(number)));
    }

    private static String name(ContentItem item) {
        return item.name().map(Code::meaning).orElse(item.value().valueType());
    }

    /** Codes, texts and names, with what stands under them in brackets; nothing for numbers, marks and references. */
    private static Optional<String> words(ContentItem item) {
        Optional<String> said = Optional.empty();
        if (item.value() instanceof Coded coded) {
            said = Optional.of(coded.code().meaning());
        } else if (item.value() instanceof ItemValue.Text text) {
            said = Optional.of(text.text());
        } else if (item.value() instanceof ItemValue.Person person) {
            said = Optional.of(person.name());
        } else if (item.value() instanceof Numeric numeric && item.children().isEmpty()) {
            said = numeric.measured().map(RecordText::stated);
        }
        String under = item.children().stream()
                .flatMap(child -> words(child).map(w -> name(child) + ": " + w).stream())
                .collect(Collectors.joining(", "));
        return said.map(words -> under.isEmpty() ? words : words + " (" + under + ")");
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

    /** A number that was stated, as it was stated. */
    private static String stated(Measured measured) {
        boolean plain = measured.unit().means(Codes.ucum("1"));
        return measured.decimal() + (plain ? "" : " " + measured.unit().meaning());
    }

    private void details(ContentItem details) {
        lines.add("");
        lines.add(name(details));
        Code cautions = Codes.own("CAUTIONS");
        for (ContentItem item : details.children()) {
            if (!item.isNamed(cautions) && !item.isNamed(Concepts.UNDRAWN)) {
                inside(item);
            }
        }
        details.textOf(cautions).ifPresent(text -> Stream.of("", text).forEach(lines::add));
    }

    private void inside(ContentItem item) {
        if (item.value() instanceof ItemValue.Container) {
            item.children().forEach(this::inside);
        } else {
            words(item).ifPresent(value -> line(2, name(item), value));
        }
    }
}
