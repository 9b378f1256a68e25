// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.procedure.BlockList;
import dev.plumbline.readout.Readout;
import dev.plumbline.record.Cautions;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A record as a person reads it: where it stands, the pictures, plan and observation side by side, then everything that
 * the report says, and how it is had in other forms. It prints on A4.
 */
public final class RecordPage {
    private final Content content;
    private final Wording wording;

    private RecordPage(Content content, Wording wording) {
        this.content = content;
        this.wording = wording;
    }

    /**
     * What is shown.
     *
     * @param record of {@code GET /v1/records/{uid}}
     * @param readout the report in words
     * @param captions of the record's drawings, in their order
     * @param dispatches of {@code GET /v1/dispatch?caseId=..}
     */
    public record Content(JsonNode record, Readout readout, List<String> captions, JsonNode dispatches) {
        public Content {
            captions = List.copyOf(captions);
        }

        private String uid() {
            return record.path("recordUid").asText();
        }
    }

    /** The page. */
    public static String html(Content content, BlockList blocks, ZoneOffset zone) {
        RecordPage page = new RecordPage(content, new Wording(blocks, zone));
        return Layout.page("record", content.readout().title(), "", page::write);
    }

    private void write(Html html) {
        html.open("article", "class", "record");
        head(html);
        new RecordLifePart(content.record(), wording).write(html);
        pictures(html);
        comparisons(html);
        html.open("div", "class", "all-said");
        content.readout().sections().forEach(section -> section(html, section));
        html.end();
        dispatches(html);
        links(html);
        if (!content.readout().cautions().isBlank()
                && !content.readout().cautions().equals(Cautions.text())) {
            html.element("h2", "Cautions when it was made")
                    .element("p", content.readout().cautions());
        }
        html.element(
                "p",
                "Structured report " + content.uid() + ", revision "
                        + content.record().path("revision").asText(),
                "class",
                "uid");
        html.end();
    }

    private void head(Html html) {
        html.element("h1", content.readout().title());
        html.element("p", RecordLifePart.standing(content.record()), "class", "standing", "id", "standing");
        html.open("dl", "class", "facts");
        content.readout().head().forEach(line -> fact(html, line.name(), line.value()));
        JsonNode context = content.record().at("/case/context");
        fact(html, "Block", wording.block(context));
        html.open("div", "class", "side").element("dt", "Patient's side");
        html.element("dd", side(context), "id", "side").end();
        html.end();
    }

    private static String side(JsonNode context) {
        String side = Wording.plain(context, "laterality");
        return side.equals(Wording.NOT_STATED) ? side : side.toUpperCase(Locale.ROOT);
    }

    static void fact(Html html, String name, String value) {
        html.open("div").element("dt", name).element("dd", value).end();
    }

    private void pictures(Html html) {
        html.open("section", "aria-labelledby", "pictures-title").element("h2", "Pictures", "id", "pictures-title");
        html.open("div", "class", "pictures");
        for (int i = 0; i < content.captions().size(); i++) {
            String caption = content.captions().get(i);
            String address = "../v1/records/" + content.uid() + "?accept=image/svg%2Bxml&drawing=" + (i + 1);
            html.open("figure").open("a", "href", address);
            html.empty("img", "src", address, "alt", caption + ", drawn over the frame; its numbers are in the tables");
            html.end().element("figcaption", caption).end();
        }
        html.end().end();
    }

    private void comparisons(Html html) {
        JsonNode observations = content.record().path("observations");
        if (observations.isEmpty()) {
            return;
        }
        html.open("section", "aria-labelledby", "compared-title");
        html.element("h2", "Plan and observation", "id", "compared-title");
        for (int i = 0; i < observations.size(); i++) {
            comparison(
                    html,
                    observations.get(i),
                    content.record().path("deviations").path(i));
        }
        html.end();
    }

    private void comparison(Html html, JsonNode observation, JsonNode deviation) {
        String id = observation.path("id").asText();
        String phase = Optional.ofNullable(observation.path("phase").textValue())
                .map(word -> ", " + Wording.spelledOut(word))
                .orElse("");
        html.open("table", "class", "numbers compared", "data-observation", id);
        html.element("caption", "Observation " + id + phase + ", with the expanded uncertainty (k = 2)");
        html.open("thead").open("tr").element("td", "");
        for (String column : List.of("planned", "observed", "deviation")) {
            html.element("th", column, "scope", "col");
        }
        html.end().end().open("tbody");
        for (ComparedRow row : ComparedRow.ALL) {
            if (row.isIn(deviation)) {
                html.open("tr", "data-field", row.observed()).element("th", row.words(), "scope", "row");
                html.element("td", row.planned(content.record()), "data-name", "planned");
                html.element("td", row.observed(observation), "data-name", "observed");
                html.open("td", "data-name", "deviation")
                        .element("span", row.difference(deviation))
                        .element("small", row.judged(deviation))
                        .end();
                html.end();
            }
        }
        html.end().end();
    }

    private static void section(Html html, Readout.Section section) {
        html.open("section", "class", "said").element("h2", section.heading());
        if (!section.lines().isEmpty()) {
            html.open("table", "class", "numbers").open("tbody");
            section.lines()
                    .forEach(line -> html.open("tr")
                            .element("th", line.name(), "scope", "row")
                            .element("td", line.value())
                            .end());
            html.end().end();
        }
        html.end();
    }

    private void dispatches(Html html) {
        html.open("section", "aria-labelledby", "dispatch-title", "id", "dispatch");
        html.element("h2", "Dispatch to other archives", "id", "dispatch-title");
        String none = content.record().path("state").asText().equals("draft")
                ? "A draft is kept here and never sent."
                : "No other archive is configured to get it; it stands in the archive of this service.";
        new Table(
                        "Each archive that gets this record",
                        List.of(
                                new Table.Column("To", (out, row) -> out.text(Wording.plain(row, "destination"))),
                                new Table.Column("State", (out, row) -> out.text(state(row))),
                                new Table.Column("Age", (out, row) -> out.text(Wording.plain(row, "age"))),
                                new Table.Column("Last answer", (out, row) -> out.text(ListPage.answer(row)))))
                .write(html, content.dispatches(), none);
        html.end();
    }

    private static String state(JsonNode row) {
        String given = row.path("released").isNull() ? "" : ", given up by a person";
        return Wording.plain(row, "state") + given;
    }

    private void links(Html html) {
        String address = "../v1/records/" + content.uid() + "?accept=";
        String caseId = content.record().path("caseId").asText();
        html.open("nav", "class", "forms", "aria-label", "This record in other forms and pages")
                .open("ul");
        link(html, address + "application/dicom", "DICOM");
        link(html, address + "application/json", "JSON");
        link(html, address + "application/pdf", "PDF");
        link(html, address + "text/plain", "Text");
        link(html, address + "image/svg%2Bxml", "Drawings (SVG)");
        link(html, "mark?case=" + Wording.inAddress(caseId), "Marks of the case");
        link(html, "log?case=" + Wording.inAddress(caseId), "Log of the case");
        html.end().end();
    }

    private static void link(Html html, String address, String text) {
        html.open("li").element("a", text, "href", address).end();
    }
}
