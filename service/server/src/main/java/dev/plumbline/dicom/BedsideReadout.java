// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Moment;
import dev.plumbline.readout.Readout;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What was said and done at the bedside, for people: what nobody answered is said to be not recorded, what was taken back
 * stays and is said to be, and every event has its time, who entered it, and whether that was later.
 */
final class BedsideReadout {
    private static final String NOT_RECORDED = "not recorded";
    private static final Code CHECKS = Codes.own("CHECKS");
    private static final Code EVENTS = Codes.own("EVENTS");
    private static final Code AGENTS = Codes.own("AGENTS");
    private static final Code INCOMPLETE = Codes.own("INCOMPLETE");
    private static final Code EVENT_ID = Codes.own("EVENT-ID");
    private static final Code CORRECTS = Codes.own("CORRECTS");
    private static final Code ENTERED_AT = Codes.own("ENTERED-AT");
    private static final Code ENTERED_BY = Codes.own("ENTERED-BY");
    private static final Code ENTERED_LATER = Codes.own("ENTERED-LATER");
    private static final Code CHECK_ID = Codes.own("CHECK-ID");
    /** What programs need and people do not. */
    private static final Set<Code> FOR_PROGRAMS = Set.of(
            EVENT_ID,
            Codes.own("ENTERED-STATED"),
            Codes.own("TIME-STATED"),
            Codes.own("LOG-PLACE"),
            Codes.own("ENTRY-ID"));

    private final ContentItem details;
    private final Set<Code> hidden = new HashSet<>(FOR_PROGRAMS);

    private BedsideReadout(ContentItem details) {
        this.details = details;
    }

    /** Sections from the context to the reasons of an incomplete record; none where nothing of the bedside was recorded. */
    static List<Readout.Section> sections(ContentItem details) {
        return new BedsideReadout(details).sections();
    }

    /** Whether an item of the procedure details is told here. */
    static boolean tells(ContentItem item) {
        return item.value() instanceof ItemValue.Container || item.isNamed(INCOMPLETE);
    }

    private List<Readout.Section> sections() {
        List<Readout.Section> sections = new ArrayList<>();
        for (ContentItem item : details.children()) {
            if (item.value() instanceof ItemValue.Container && !item.isNamed(Concepts.UNDRAWN)) {
                sections.add(new Readout.Section(name(item), lines(item)));
            }
        }
        boolean kept =
                Stream.of(EVENTS, AGENTS).anyMatch(part -> details.first(part).isPresent());
        if (kept && details.first(CHECKS).isEmpty()) {
            sections.add(new Readout.Section(CHECKS.meaning(), unanswered(List.of())));
        }
        List<Readout.Line> reasons = details.named(INCOMPLETE)
                .map(item -> new Readout.Line(
                        item.textOf(Codes.own("INCOMPLETE-ITEM")).orElse(INCOMPLETE.meaning()), said(item)))
                .toList();
        if (!reasons.isEmpty()) {
            sections.add(new Readout.Section(INCOMPLETE.meaning(), reasons));
        }
        return sections;
    }

    private List<Readout.Line> lines(ContentItem container) {
        if (container.isNamed(EVENTS)) {
            return events(container);
        }
        List<Readout.Line> lines = new ArrayList<>();
        for (ContentItem item : container.children()) {
            String name = item.textOf(CHECK_ID).orElseGet(() -> name(item));
            lines.add(new Readout.Line(name, said(item) + brackets(item)));
        }
        if (container.isNamed(CHECKS)) {
            lines.addAll(unanswered(container.children()));
        }
        return lines;
    }

    private static List<Readout.Line> unanswered(List<ContentItem> answers) {
        return Codes.set("set-up checks").entries().stream()
                .map(Codes.Entry::code)
                .filter(check -> answers.stream().noneMatch(answer -> answer.isNamed(check)))
                .filter(check -> !check.means(Codes.own("CK-OTHER")))
                .map(check -> new Readout.Line(check.meaning(), NOT_RECORDED))
                .toList();
    }

    private List<Readout.Line> events(ContentItem container) {
        Map<String, ContentItem> byId = new HashMap<>();
        Set<String> corrected = new HashSet<>();
        container.children().forEach(event -> {
            event.textOf(EVENT_ID).ifPresent(id -> byId.put(id, event));
            event.textOf(CORRECTS).ifPresent(corrected::add);
        });
        hidden.addAll(Set.of(ENTERED_AT, ENTERED_BY, ENTERED_LATER, CORRECTS));
        List<Readout.Line> lines = new ArrayList<>();
        for (ContentItem event : container.children()) {
            List<String> words = new ArrayList<>();
            event.textOf(CORRECTS)
                    .map(id -> Optional.ofNullable(byId.get(id))
                            .map(other -> "corrects " + clock(other) + " " + said(other))
                            .orElse("corrects an event that is not in the record"))
                    .ifPresent(words::add);
            String more = under(event);
            if (!more.isEmpty()) {
                words.add(more);
            }
            words.add(entered(event));
            if (event.textOf(EVENT_ID).filter(corrected::contains).isPresent()) {
                words.add("corrected later, see below");
            }
            lines.add(new Readout.Line(clock(event) + " " + said(event), String.join("; ", words)));
        }
        hidden.removeAll(Set.of(ENTERED_AT, ENTERED_BY, ENTERED_LATER, CORRECTS));
        return lines;
    }

    private static String entered(ContentItem event) {
        String by = event.first(ENTERED_BY).map(BedsideReadout::said).orElse("nobody named");
        String at = event.first(ENTERED_AT)
                .flatMap(item -> item.value() instanceof Moment moment ? Optional.of(moment.text()) : Optional.empty())
                .map(BedsideReadout::clock)
                .orElse("at a time not stated");
        return (event.first(ENTERED_LATER).isPresent() ? "entered later, " : "entered ") + at + " by " + by;
    }

    private static String clock(ContentItem item) {
        return item.observedAt().map(BedsideReadout::clock).orElse("time not stated");
    }

    /** Hours, minutes and seconds of a DICOM date and time; all of it where it has none. */
    static String clock(String dateTime) {
        return dateTime.length() < 14
                ? dateTime
                : dateTime.substring(8, 10) + ":" + dateTime.substring(10, 12) + ":" + dateTime.substring(12, 14);
    }

    /** What stands under an item, and its time, in brackets. */
    private String brackets(ContentItem item) {
        String inside = Stream.concat(
                        item.observedAt().map(time -> "at " + clock(time)).stream(), Stream.of(under(item)))
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
        return inside.isEmpty() ? "" : " (" + inside + ")";
    }

    private String under(ContentItem item) {
        return item.children().stream()
                .filter(child -> child.name().filter(this::isHidden).isEmpty() && !child.isNamed(CHECK_ID))
                .map(child -> name(child) + ": " + said(child) + brackets(child))
                .collect(Collectors.joining(", "));
    }

    private boolean isHidden(Code code) {
        return hidden.stream().anyMatch(code::means);
    }

    private static String name(ContentItem item) {
        return item.name().map(Code::meaning).orElse(item.value().valueType());
    }

    private static String said(ContentItem item) {
        ItemValue value = item.value();
        if (value instanceof ItemValue.Coded coded) {
            return coded.code().meaning();
        }
        if (value instanceof ItemValue.Text text) {
            return text.text();
        }
        if (value instanceof ItemValue.Person person) {
            return person.name();
        }
        if (value instanceof Moment moment) {
            return clock(moment.text());
        }
        return FieldItem.measured(item).map(RecordReadout::stated).orElse("no value");
    }
}
