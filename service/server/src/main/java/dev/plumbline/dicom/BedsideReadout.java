// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

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
    private static final Code SIGHT = Codes.own("SIGHT");
    private static final Set<Code> OF_EVENTS = Set.of(ENTERED_AT, ENTERED_BY, ENTERED_LATER, CORRECTS);
    /** What programs need and people do not. */
    private static final Set<Code> FOR_PROGRAMS = Set.of(
            EVENT_ID,
            Codes.own("ENTERED-STATED"),
            Codes.own("TIME-STATED"),
            Codes.own("LOG-PLACE"),
            Codes.own("ENTRY-ID"));

    private final ContentItem details;
    private final ReadoutWords words;
    private final Map<String, ContentItem> events = new HashMap<>();
    private final Set<String> corrected = new HashSet<>();

    private BedsideReadout(ContentItem details, ReadoutWords words) {
        this.details = details;
        this.words = words;
        Stream.of(EVENTS, SIGHT)
                .flatMap(details::named)
                .flatMap(container -> container.children().stream())
                .forEach(event -> {
                    event.textOf(EVENT_ID).ifPresent(id -> events.put(id, event));
                    event.textOf(CORRECTS).ifPresent(corrected::add);
                });
    }

    /** Sections from the context to the reasons of an incomplete record; none where nothing of the bedside was recorded. */
    static List<Readout.Section> sections(ContentItem details, ReadoutWords words) {
        return new BedsideReadout(details, words).sections();
    }

    /** Whether an item of the procedure details is told here. */
    static boolean tells(ContentItem item) {
        return item.value() instanceof ItemValue.Container || item.isNamed(INCOMPLETE);
    }

    private List<Readout.Section> sections() {
        List<Readout.Section> sections = new ArrayList<>();
        for (ContentItem item : details.children()) {
            if (item.value() instanceof ItemValue.Container && !item.isNamed(Concepts.UNDRAWN)) {
                sections.add(new Readout.Section(ReadoutWords.name(item), lines(item)));
            }
        }
        boolean kept =
                Stream.of(EVENTS, AGENTS).anyMatch(part -> details.first(part).isPresent());
        if (kept && details.first(CHECKS).isEmpty()) {
            sections.add(new Readout.Section(CHECKS.meaning(), unanswered(List.of())));
        }
        List<Readout.Line> reasons = details.named(INCOMPLETE)
                .map(item -> new Readout.Line(
                        item.textOf(Codes.own("INCOMPLETE-ITEM")).orElse(INCOMPLETE.meaning()), words.said(item)))
                .toList();
        if (!reasons.isEmpty()) {
            sections.add(new Readout.Section(INCOMPLETE.meaning(), reasons));
        }
        return sections;
    }

    private List<Readout.Line> lines(ContentItem container) {
        List<Readout.Line> lines = new ArrayList<>();
        for (ContentItem item : container.children()) {
            if (item.first(EVENT_ID).isPresent()) {
                lines.add(event(item));
            } else if (AgentReadout.tells(item)) {
                lines.addAll(new AgentReadout(words).lines(item));
            } else {
                String name = item.textOf(CHECK_ID).orElseGet(() -> ReadoutWords.name(item));
                lines.add(new Readout.Line(name, words.said(item) + brackets(item)));
            }
        }
        if (container.isNamed(CHECKS)) {
            lines.addAll(unanswered(container.children()));
        }
        return lines;
    }

    /** A check that has no word cannot be answered: side and consent have their places, a site's own its own words. */
    private static List<Readout.Line> unanswered(List<ContentItem> answers) {
        return Codes.set("set-up checks").entries().stream()
                .filter(entry -> entry.word().isPresent())
                .map(Codes.Entry::code)
                .filter(check -> answers.stream().noneMatch(answer -> answer.isNamed(check)))
                .map(check -> new Readout.Line(check.meaning(), NOT_RECORDED))
                .toList();
    }

    /** An event or a look at the needle: when, what, what of it, and who entered it. */
    private Readout.Line event(ContentItem event) {
        List<String> parts = new ArrayList<>();
        event.textOf(CORRECTS)
                .map(id -> Optional.ofNullable(events.get(id))
                        .map(other -> "corrects " + words.when(other) + " " + words.said(other))
                        .orElse("corrects an event that is not in the record"))
                .ifPresent(parts::add);
        String more = under(event);
        if (!more.isEmpty()) {
            parts.add(more);
        }
        parts.add(entered(event));
        if (event.textOf(EVENT_ID).filter(corrected::contains).isPresent()) {
            parts.add("corrected later, see below");
        }
        return new Readout.Line(words.when(event) + " " + words.said(event), String.join("; ", parts));
    }

    private String entered(ContentItem event) {
        String by = event.first(ENTERED_BY).map(words::said).orElse("nobody named");
        String at = event.first(ENTERED_AT).map(words::said).orElse("at a time not stated");
        return (event.first(ENTERED_LATER).isPresent() ? "entered later, " : "entered ") + at + " by " + by;
    }

    /** What stands under an item, and its time, in brackets. */
    private String brackets(ContentItem item) {
        String inside = Stream.concat(
                        item.observedAt().map(time -> "at " + words.clock(time)).stream(), Stream.of(under(item)))
                .filter(said -> !said.isEmpty())
                .collect(Collectors.joining(", "));
        return inside.isEmpty() ? "" : " (" + inside + ")";
    }

    private String under(ContentItem item) {
        boolean event = item.first(EVENT_ID).isPresent();
        return item.children().stream()
                .filter(child -> !isHidden(child, event))
                .map(child -> ReadoutWords.name(child) + ": " + words.said(child) + brackets(child))
                .collect(Collectors.joining(", "));
    }

    private static boolean isHidden(ContentItem child, boolean ofEvent) {
        return child.isNamed(CHECK_ID)
                || FOR_PROGRAMS.stream().anyMatch(child::isNamed)
                || (ofEvent && OF_EVENTS.stream().anyMatch(child::isNamed));
    }
}
