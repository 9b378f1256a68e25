// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.ItemValue.Numeric;
import dev.plumbline.procedure.Complications;
import dev.plumbline.procedure.Derived;
import dev.plumbline.procedure.Elapsed;
import dev.plumbline.procedure.Happening;
import dev.plumbline.procedure.LoggedEvent;
import dev.plumbline.procedure.ProcedureLog;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.procedure.TipAtInjection;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The log in PL1: what follows from it, SIGHT, EVENTS and complications. */
final class LogItems {
    private static final Code SIGHT = Codes.own("SIGHT");
    private static final Code DETAIL = Codes.own("SIGHT-DETAIL");
    private static final Code SITE_CHOICE = Codes.own("SITE-CHOICE");
    private static final Code EVENTS = Codes.own("EVENTS");
    private static final Code COMPLICATION = Codes.sct("116224001");
    private static final String DETAILS = "sight details";
    private static final String SIGHT_KIND = "sightStep";

    private final RecordTimes times;
    private final EventItems items;

    LogItems(RecordTimes times) {
        this.times = times;
        items = new EventItems(times);
    }

    /** Passes, redirections and times; the time the tip was not seen is part of the search, so only of its full record. */
    List<ContentItem> figures(ProcedureLog log, SightDetail detail) {
        if (log.events().isEmpty()) {
            return List.of();
        }
        Derived derived = Derived.of(log);
        List<ContentItem> figures = new ArrayList<>();
        figures.add(count(Codes.dcm("111436"), derived.passes(), "{passes}"));
        figures.add(count(Codes.own("N-REDIRECT"), derived.redirections(), "1"));
        figures.add(elapsed(Codes.own("T-UNDERSKIN"), derived.underSkin()));
        if (detail == SightDetail.FULL) {
            figures.add(elapsed(Codes.own("T-UNSEEN"), derived.tipUnseen()));
        }
        return figures;
    }

    private static ContentItem count(Code concept, int value, String unit) {
        return Measurement.plain(
                Relation.CONTAINS, concept, DecimalText.stated(BigDecimal.valueOf(value), Codes.ucum(unit)));
    }

    private static ContentItem elapsed(Code concept, Elapsed elapsed) {
        if (elapsed instanceof Elapsed.Known known) {
            return Measurement.plain(
                    Relation.CONTAINS, concept, DecimalText.stated(seconds(known.duration()), Codes.ucum("s")));
        }
        Elapsed.Unknown unknown = (Elapsed.Unknown) elapsed;
        Code why = Codes.ofWord("reasons", unknown.reason().word());
        String qualifier =
                Codes.entry(why.scheme(), why.value()).text("qualifier").orElseThrow();
        return ContentItem.of(
                        Relation.CONTAINS, concept, new Numeric(Optional.empty(), Optional.of(Codes.named(qualifier))))
                .with(ContentItem.code(Relation.HAS_CONCEPT_MOD, Concepts.WHY_ABSENT, why));
    }

    private static BigDecimal seconds(Duration duration) {
        return BigDecimal.valueOf(duration.getSeconds()).add(BigDecimal.valueOf(duration.getNano(), 9));
    }

    /**
     * What of the search goes into the record, and how much that is.
     *
     * @param stated as the case states it
     * @param events as they are recorded
     */
    Optional<ContentItem> sight(ProcedureLog log, Optional<SightDetail> stated, SightDetail detail, JsonNode events) {
        if (log.events().isEmpty() && stated.isEmpty()) {
            return Optional.empty();
        }
        List<ContentItem> sight = new ArrayList<>();
        ContentItem how = ContentItem.code(Relation.CONTAINS, DETAIL, Codes.ofWord(DETAILS, detail.word()));
        sight.add(
                stated.isPresent()
                        ? how
                        : how.with(ContentItem.code(Relation.HAS_PROPERTIES, SITE_CHOICE, Concepts.yesOrNo(true))));
        if (detail.recordsTipAtInjection()) {
            TipAtInjection.of(log)
                    .ifPresent(seen -> sight.add(ContentItem.code(
                            Relation.CONTAINS,
                            Codes.own("TIP-AT-INJECT"),
                            Codes.ofWord("tip at injection", seen.word()))));
        }
        for (int i = 0; i < events.size(); i++) {
            if (isSight(events.get(i))) {
                sight.add(items.sight(events.get(i), i));
            }
        }
        return Optional.of(ContentItem.container(SIGHT).with(sight));
    }

    /** @param events as they are recorded */
    Optional<ContentItem> events(JsonNode events) {
        List<ContentItem> written = new ArrayList<>();
        for (JsonNode event : events) {
            if (!isSight(event)) {
                written.add(items.event(event));
            }
        }
        return written.isEmpty()
                ? Optional.empty()
                : Optional.of(ContentItem.container(EVENTS).with(written));
    }

    private static boolean isSight(JsonNode event) {
        return event.path("kind").asText().equals(SIGHT_KIND);
    }

    /** What was noticed, or until when and by whom was looked; nothing where nobody said. */
    List<ContentItem> complications(ProcedureLog log) {
        Complications said = Complications.of(log);
        if (said instanceof Complications.Noticed noticed) {
            return noticed.events().stream().map(this::noticed).toList();
        }
        if (said instanceof Complications.NoneNoticed none) {
            return List.of(ContentItem.code(Relation.CONTAINS, COMPLICATION, Codes.dcm("111492"))
                    .with(
                            times.moment(Relation.HAS_PROPERTIES, Codes.own("LOOKED-UNTIL"), none.until()),
                            ContentItem.person(Relation.HAS_PROPERTIES, Codes.own("LOOKED-BY"), none.by())));
        }
        return List.of();
    }

    private ContentItem noticed(LoggedEvent event) {
        Happening.Complication what = (Happening.Complication) event.what();
        ContentItem coded = FieldItem.coded(Relation.CONTAINS, COMPLICATION, what.code(), EventItems.COMPLICATIONS);
        List<ContentItem> properties = new ArrayList<>();
        properties.add(times.moment(Relation.HAS_PROPERTIES, Codes.own("NOTED-AT"), event.happenedAt()));
        if (coded.value() instanceof ItemValue.Text own) {
            coded = ContentItem.code(Relation.CONTAINS, COMPLICATION, Codes.own("CP-OTHER"));
            properties.add(ContentItem.text(Relation.HAS_PROPERTIES, Concepts.COMMENT, own.text()));
        }
        what.text()
                .ifPresent(text -> properties.add(ContentItem.text(Relation.HAS_PROPERTIES, Concepts.COMMENT, text)));
        return coded.with(properties);
    }

    void read(ContentItem details, ObjectNode json) {
        Optional<ContentItem> sight = details.first(SIGHT);
        sight.flatMap(container -> container.first(DETAIL))
                .filter(how -> how.first(SITE_CHOICE).isEmpty())
                .flatMap(how -> FieldItem.word(how, DETAILS))
                .ifPresent(word -> json.putObject("record").put("sightDetail", word));
        List<ObjectNode> events = new ArrayList<>();
        details.named(EVENTS)
                .flatMap(container -> container.children().stream())
                .forEach(item -> events.add(items.readEvent(item, json.objectNode())));
        sight.stream()
                .flatMap(container -> container.children().stream())
                .filter(EventItems::isSight)
                .sorted(Comparator.comparingInt(EventItems::place))
                .forEach(item -> events.add(
                        Math.min(EventItems.place(item), events.size()), items.readSight(item, json.objectNode())));
        if (!events.isEmpty()) {
            ArrayNode log = json.putArray("events");
            events.forEach(log::add);
        }
    }
}
