// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import dev.plumbline.problem.Problem;
import dev.plumbline.procedure.BlockList;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Where one begins: what is unfinished, what is not yet proved in the archive, and the records that a search finds. */
public final class ListPage {
    /** Fields of the search that both cases and records are asked for. */
    public static final List<String> FIELDS = List.of("patient", "from", "to", "block", "operator");

    private final Answers answers;
    private final Wording wording;

    private ListPage(Answers answers, Wording wording) {
        this.answers = answers;
        this.wording = wording;
    }

    /**
     * What the routes of the interface answer.
     *
     * @param cases of {@code GET /v1/cases}
     * @param records of {@code GET /v1/records}
     * @param unproved dispatches that are queued, sent or held
     * @param status of {@code GET /v1/status}
     */
    public record Answers(JsonNode cases, JsonNode records, JsonNode unproved, JsonNode status) {}

    /**
     * What was asked for.
     *
     * @param fields by name, as they were typed
     * @param problem why they cannot be searched for; then the answers are of everything
     */
    public record Search(Map<String, String> fields, Optional<Problem> problem) {
        public Search {
            fields = Map.copyOf(fields);
        }

        private String typed(String field) {
            return fields.getOrDefault(field, "");
        }

        private boolean asks() {
            return FIELDS.stream().anyMatch(field -> !typed(field).isBlank());
        }
    }

    /** The page. */
    public static String html(Answers answers, Search search, BlockList blocks, ZoneOffset zone) {
        ListPage page = new ListPage(answers, new Wording(blocks, zone));
        return Layout.page("list", "Cases and records", "", html -> page.content(html, search));
    }

    private void content(Html html, Search search) {
        html.open("div", "class", "list");
        html.element("h1", "Cases and records");
        html.open("p")
                .element("a", "Mark a frame", "class", "action", "href", "mark")
                .end();
        search(html, search);
        String found = search.asks() && search.problem().isEmpty() ? " that were searched for" : "";
        html.open("section").element("h2", "Unfinished cases" + found);
        cases().write(html, answers.cases().path("cases"), "No unfinished case.");
        html.end().open("section").element("h2", "Not yet proved in the archive");
        for (String line : answers.status().path("text").asText().lines().toList()) {
            html.element("p", line);
        }
        unproved().write(html, answers.unproved(), "Nothing waits.");
        html.end().open("section").element("h2", "Records" + found);
        records().write(html, latest(answers.records().path("records")), "No record.");
        more(html);
        html.end().end();
    }

    /** A draft that was signed says no more than what it was signed as. */
    private static JsonNode latest(JsonNode records) {
        ArrayNode rows = JsonNodeFactory.instance.arrayNode();
        records.forEach(row -> {
            if (!row.path("state").asText().equals("draft")
                    || row.path("successor").isNull()) {
                rows.add(row);
            }
        });
        return rows;
    }

    private void more(Html html) {
        int shown = answers.records().path("records").size();
        int total = answers.records().path("total").asInt();
        if (shown < total) {
            html.element("p", "The newest " + shown + " of " + total + "; search to find others.");
        }
    }

    private void search(Html html, Search search) {
        html.open("form", "class", "search", "method", "get", "action", "list", "role", "search");
        search.problem()
                .ifPresent(problem -> html.element(
                        "p", problem.detail() + " " + problem.remedy(), "class", "problem", "role", "alert"));
        input(html, search, "patient", "Patient ID", "text");
        input(html, search, "from", "From day", "date");
        input(html, search, "to", "To day", "date");
        html.open("div").element("label", "Block", "for", "block").open("select", "id", "block", "name", "block");
        html.element("option", "any", "value", "");
        for (BlockList.Block block : wording.blocks().blocks()) {
            if (block.id().equals(search.typed("block"))) {
                html.element("option", block.name(), "value", block.id(), "selected", "");
            } else {
                html.element("option", block.name(), "value", block.id());
            }
        }
        html.end().end();
        input(html, search, "operator", "Operator, as in Doe^Jo", "text");
        html.open("div", "class", "buttons").element("button", "Search", "type", "submit");
        html.element("a", "Show all", "href", "list").end().end();
    }

    private static void input(Html html, Search search, String field, String label, String type) {
        html.open("div").element("label", label, "for", field);
        html.empty(
                "input", "id", field, "name", field, "type", type, "value", search.typed(field), "autocomplete", "off");
        html.end();
    }

    private Table cases() {
        return new Table(
                "Cases that nobody has signed, those that changed last first",
                List.of(
                        new Table.Column("Patient", ListPage::patient),
                        new Table.Column("Block", (html, row) -> html.text(wording.block(row))),
                        new Table.Column("Patient's side", (html, row) -> html.text(Wording.plain(row, "laterality"))),
                        new Table.Column("Operator", (html, row) -> html.text(Wording.person(row, "operator"))),
                        new Table.Column("Stands at", (html, row) -> html.text(standsAt(row))),
                        new Table.Column(
                                "Last change",
                                (html, row) -> html.text(
                                        wording.moment(row.path("changed").asText()))),
                        new Table.Column("Go on", ListPage::goOn)));
    }

    private static void goOn(Html html, JsonNode row) {
        html.open("span", "class", "ways");
        link(html, "mark?case=", row, "caseId", "Mark");
        link(html, "log?case=", row, "caseId", "Log");
        if (row.path("draft").isTextual()) {
            link(html, "record?uid=", row, "draft", "Draft");
        }
        html.end();
    }

    private static String standsAt(JsonNode row) {
        int observations = row.path("observations").asInt();
        String seen = observations == 0
                ? "no observation"
                : observations == 1 ? "one observation" : observations + " observations";
        String chosen = row.path("chosen").asBoolean() ? "path chosen" : "path not chosen";
        String draft = row.path("draft").isTextual() ? ", draft" : "";
        return Wording.approach(row) + ", " + chosen + ", " + seen + draft;
    }

    private Table unproved() {
        return new Table(
                "Dispatch to other archives, not proved yet",
                List.of(
                        new Table.Column("Record", (html, row) -> link(html, "record?uid=", row, "recordUid", "Read")),
                        new Table.Column("To", (html, row) -> html.text(Wording.plain(row, "destination"))),
                        new Table.Column("State", (html, row) -> html.text(Wording.plain(row, "state"))),
                        new Table.Column("Age", (html, row) -> html.text(Wording.plain(row, "age"))),
                        new Table.Column("Last answer", (html, row) -> html.text(answer(row)))));
    }

    static String answer(JsonNode row) {
        String words = (row.path("code").asText("") + " " + row.path("reason").asText("")).strip();
        return words.isEmpty() ? "none yet" : words;
    }

    private Table records() {
        return new Table(
                "Records, newest first",
                List.of(
                        new Table.Column("Patient", ListPage::patient),
                        new Table.Column("Block", (html, row) -> html.text(wording.block(row))),
                        new Table.Column("Patient's side", (html, row) -> html.text(Wording.plain(row, "laterality"))),
                        new Table.Column("Operator", (html, row) -> html.text(Wording.person(row, "operator"))),
                        new Table.Column("State", (html, row) -> html.text(state(row))),
                        new Table.Column(
                                "Time",
                                (html, row) -> html.text(
                                        Wording.stated(row.path("time").asText()))),
                        new Table.Column(
                                "Record", (html, row) -> link(html, "record?uid=", row, "recordUid", "Read"))));
    }

    private static String state(JsonNode row) {
        String differs = row.path("differs").asBoolean() ? ", differs from the plan" : "";
        return Wording.plain(row, "state") + differs;
    }

    private static void patient(Html html, JsonNode row) {
        html.text(Wording.person(row, "patientName")).text(" ").element("small", Wording.plain(row, "patientId"));
    }

    /** Several links of one word are told apart by what a reader hears beside it. */
    private static void link(Html html, String address, JsonNode row, String field, String text) {
        String id = row.path(field).asText();
        html.open("a", "href", address + Wording.inAddress(id)).text(text);
        html.open("span", "class", "heard").text(" " + id).end().end();
    }
}
