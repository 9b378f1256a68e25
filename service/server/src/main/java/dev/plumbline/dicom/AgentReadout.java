// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.readout.PersonName;
import dev.plumbline.readout.Readout;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Agents, other doses of the day and doses beside their limits in short lines, one thing each. */
final class AgentReadout {
    private static final Code DRUG_ID = Codes.own("DRUG-ID");
    private static final Code GIVEN = Codes.dcm("122083");
    private static final Code GIVEN_ML = Codes.dcm("122091");
    private static final Code EARLIER = Codes.own("AGENT-EARLIER");
    private static final Code CONCENTRATION = Codes.dcm("122093");
    private static final Code LABEL = Codes.own("CONC-LABEL");
    private static final Code PER_KG = Codes.own("DOSE-KG");
    private static final Code MIXTURE = Codes.own("MIXTURE");
    private static final Code ADDITIVE = Codes.own("ADDITIVE");
    private static final Code VASOCONSTRICTOR = Codes.own("VASOCONSTRICTOR");
    private static final Code ACKNOWLEDGED = Codes.own("LIMIT-ACK");
    private static final Code SESSION_MASS = Codes.own("SESSION-MASS");
    private static final Code BASIS = Codes.own("DOSE-BASIS");
    private static final Code ROUTE = Codes.sct("410675002");
    private static final Code TECHNIQUE = Codes.own("TECHNIQUE");

    /** What an item is, after the name of its drug. */
    private static final Map<Code, String> KINDS = Map.of(
            GIVEN,
            "given",
            Codes.own("AGENT-NOTGIVEN"),
            "entered, none given",
            EARLIER,
            "earlier entry, replaced",
            Codes.own("OTHER-DOSE"),
            "given elsewhere today",
            SessionDoseItems.TOTAL,
            "over the session",
            SessionDoseItems.BESIDE_LIMIT,
            "beside its limit");

    private static final Map<Code, String> VOLUMES = Map.of(
            Codes.own("VOL-PLANNED"),
            "planned",
            Codes.own("VOL-DRAWN"),
            "drawn up",
            GIVEN_ML,
            "entered as given",
            Codes.own("VOL-DISCARD"),
            "discarded");

    /** Told by name in one of the lines, or for programs. */
    private static final Set<Code> TOLD = Stream.of(
                    Stream.of(CONCENTRATION, LABEL, AgentItems.MASS, PER_KG, MIXTURE, ADDITIVE, VASOCONSTRICTOR),
                    Stream.of(ACKNOWLEDGED, SESSION_MASS, BASIS, ROUTE, TECHNIQUE, DRUG_ID, Codes.own("PURPOSE")),
                    Stream.of(SessionDoseItems.SHARE, SessionDoseItems.LIMIT, SessionDoseItems.NONE),
                    Stream.of(SessionDoseItems.SOURCE, SessionDoseItems.EDITION, SessionDoseItems.APPROVED_BY),
                    Stream.of(Codes.dcm("111529"), Codes.own("LOT"), Codes.own("ENTRY-ID"), Codes.own("CORRECTS")),
                    Stream.of(Codes.own("TIME-STATED")),
                    VOLUMES.keySet().stream())
            .flatMap(codes -> codes)
            .collect(Collectors.toUnmodifiableSet());

    private final ReadoutWords words;

    AgentReadout(ReadoutWords words) {
        this.words = words;
    }

    static boolean tells(ContentItem item) {
        return kind(item).isPresent();
    }

    private static Optional<String> kind(ContentItem item) {
        return KINDS.entrySet().stream()
                .filter(entry -> item.isNamed(entry.getKey()))
                .map(Map.Entry::getValue)
                .findFirst();
    }

    List<Readout.Line> lines(ContentItem item) {
        List<Readout.Line> lines = new ArrayList<>();
        String heading = drug(item) + ", " + kind(item).orElseThrow();
        List<String> main = new ArrayList<>(masses(item));
        concentration(item).ifPresent(main::add);
        item.observedAt().ifPresent(at -> main.add("at " + words.clock(at)));
        lines.add(new Readout.Line(heading, main.isEmpty() ? "no mass" : String.join(", ", main)));
        add(lines, "volumes", volumes(item));
        add(lines, "kind and way", words.under(item, BASIS, ROUTE, Codes.own("PURPOSE"), TECHNIQUE));
        add(lines, "vasoconstrictor", words.under(item, VASOCONSTRICTOR));
        add(lines, "mixture", words.under(item, MIXTURE));
        item.named(ADDITIVE)
                .forEach(additive -> add(
                        lines,
                        "with",
                        Stream.concat(Stream.of(drug(additive)), concentration(additive).stream())
                                .toList()));
        add(lines, "share", share(item));
        add(lines, "brand and lot", words.under(item, Codes.dcm("111529"), Codes.own("LOT")));
        item.first(ACKNOWLEDGED)
                .ifPresent(reason -> add(
                        lines,
                        "beyond the limit",
                        Stream.of(
                                        Stream.of(words.said(reason)),
                                        words.under(reason, Codes.own("DONE-BY")).stream(),
                                        reason.observedAt().map(words::clock).stream())
                                .flatMap(said -> said)
                                .toList()));
        item.children().stream()
                .filter(child -> TOLD.stream().noneMatch(child::isNamed))
                .forEach(child -> add(lines, ReadoutWords.name(child), List.of(words.said(child))));
        return lines;
    }

    private static void add(List<Readout.Line> lines, String name, List<String> said) {
        if (!said.isEmpty()) {
            lines.add(new Readout.Line("\u2013 " + name, String.join(", ", said)));
        }
    }

    private String drug(ContentItem item) {
        return item.textOf(DRUG_ID).orElseGet(() -> words.said(item));
    }

    private static List<String> masses(ContentItem item) {
        List<String> said = new ArrayList<>();
        for (Code mass : List.of(AgentItems.MASS, SESSION_MASS)) {
            computed(item, mass).ifPresent(said::add);
        }
        computed(item, PER_KG).ifPresent(perKg -> said.add(perKg + " of the actual weight"));
        return said;
    }

    private static Optional<String> computed(ContentItem item, Code concept) {
        return item.first(concept).flatMap(FieldItem::measured).map(ReadoutWords::computed);
    }

    private static Optional<String> concentration(ContentItem item) {
        return computed(item, CONCENTRATION)
                .map(said -> item.textOf(LABEL)
                        .filter(label -> !label.equals(said))
                        .map(label -> said + " (label: " + label + ")")
                        .orElse(said));
    }

    private List<String> volumes(ContentItem item) {
        return item.children().stream()
                .flatMap(child -> VOLUMES.entrySet().stream()
                        .filter(entry -> child.isNamed(entry.getKey()))
                        .map(entry -> entry.getValue() + " " + words.said(child)))
                .toList();
    }

    private List<String> share(ContentItem item) {
        Optional<String> share = computed(item, SessionDoseItems.SHARE);
        if (share.isEmpty()) {
            return item.textOf(SessionDoseItems.NONE).map(why -> "none: " + why).stream()
                    .toList();
        }
        List<String> said = new ArrayList<>();
        said.add(share.get()
                + computed(item, SessionDoseItems.LIMIT)
                        .map(limit -> " of " + limit)
                        .orElse(""));
        said.addAll(words.under(item, SessionDoseItems.SOURCE));
        words.under(item, SessionDoseItems.EDITION).forEach(edition -> said.add("edition " + edition));
        item.textOf(SessionDoseItems.APPROVED_BY).ifPresent(by -> said.add("approved by " + PersonName.words(by)));
        return said;
    }
}
