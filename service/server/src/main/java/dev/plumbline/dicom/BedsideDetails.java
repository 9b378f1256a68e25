// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.document.CaseJson;
import dev.plumbline.procedure.ProcedureLog;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.record.Bedside;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.SessionDose;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What was said and done around the needle, in PL1 and back. */
final class BedsideDetails {
    private static final Code SESSION = Codes.own("SESSION");
    private static final Code INCOMPLETE = Codes.own("INCOMPLETE");
    private static final Code INCOMPLETE_ITEM = Codes.own("INCOMPLETE-ITEM");

    private final RecordTimes times;
    private final Bedside bedside;
    private final ProcedureLog log;
    private final SightDetail detail;
    private final JsonNode json;
    private final Optional<SessionDose> given;

    private BedsideDetails(RecordSource source) {
        OffsetDateTime time = source.revision().time();
        CaseDocument document = source.revision().document();
        times = new RecordTimes(time.getOffset());
        bedside = document.bedside();
        log = bedside.log();
        detail = bedside.sightDetail().orElse(source.installation().sightDetail());
        given = source.revision().sessionDose();
        json = CaseJson.write(document.withBedside(bedside.withEvents(detail.kept(log))));
    }

    static BedsideDetails of(RecordSource source) {
        return new BedsideDetails(source);
    }

    List<ContentItem> session() {
        return bedside.session().map(name -> ContentItem.text(Relation.CONTAINS, SESSION, name)).stream()
                .toList();
    }

    /** From the figures of the log to the reasons of an incomplete record, in the order of the template. */
    List<ContentItem> items() {
        LogItems logItems = new LogItems(times);
        JsonNode events = json.path("events");
        List<ContentItem> items = new ArrayList<>(logItems.figures(log, detail));
        new ContextItems(times).item(json.path("context")).ifPresent(items::add);
        new CheckItems(times).checks(json.path("checks")).ifPresent(items::add);
        logItems.sight(log, bedside.sightDetail(), detail, events).ifPresent(items::add);
        new AgentItems(times).item(json, bedside).ifPresent(items::add);
        given.map(SessionDoseItems::item).ifPresent(items::add);
        logItems.events(events).ifPresent(items::add);
        items.addAll(logItems.complications(log));
        json.path("signature")
                .path("incompleteBecause")
                .properties()
                .forEach(reason -> items.add(ContentItem.text(
                                Relation.CONTAINS, INCOMPLETE, reason.getValue().asText())
                        .with(ContentItem.text(Relation.HAS_PROPERTIES, INCOMPLETE_ITEM, reason.getKey()))));
        return items;
    }

    List<ContentItem> team() {
        return TeamItems.members(json.path("team"));
    }

    /** Puts everything of the bedside but the team's signature; a signature must stand in {@code json} already. */
    static void read(DataSet report, ContentItem details, ObjectNode json, ObjectNode context) {
        RecordTimes times = RecordTimes.of(report);
        details.textOf(SESSION).ifPresent(name -> json.put("session", name));
        new ContextItems(times).read(details, context);
        new CheckItems(times).read(details, json);
        new AgentItems(times).read(details, json, context);
        new LogItems(times).read(details, json);
        TeamItems.read(details, json);
        if (json.get("signature") instanceof ObjectNode signature) {
            reasons(details, signature);
        }
    }

    private static void reasons(ContentItem details, ObjectNode signature) {
        details.named(INCOMPLETE).forEach(item -> {
            if (item.value() instanceof ItemValue.Text why) {
                item.textOf(INCOMPLETE_ITEM)
                        .ifPresent(name -> signature
                                .withObjectProperty("incompleteBecause")
                                .put(name, why.text()));
            }
        });
    }
}
