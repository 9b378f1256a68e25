// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.readout.PersonName;

/**
 * What happened to a record: amended, replaced, withdrawn; with the way to those before and after it.
 *
 * @param record of {@code GET /v1/records/{uid}}
 */
record RecordLifePart(JsonNode record, Wording wording) {
    /** In one line how far the record is. */
    static String standing(JsonNode record) {
        String words = switch (record.path("state").asText()) {
            case "draft" -> "Draft, not signed";
            case "signed" -> "Signed";
            case "amended" -> "Signed, in place of an earlier one";
            case "withdrawn" -> "WITHDRAWN: not to be relied on";
            default -> record.path("state").asText();
        };
        boolean replaced = record.path("successor").isTextual();
        return replaced ? words + "; a later one stands in its place" : words;
    }

    void write(Html html) {
        if (record.path("withdrawn").isObject()) {
            withdrawn(html, record.path("withdrawn"));
        }
        if (!has("predecessor") && !has("successor") && !has("draft")) {
            return;
        }
        html.open("section", "aria-labelledby", "life-title", "class", "life");
        html.element("h2", "Before and after", "id", "life-title").open("dl", "class", "facts");
        other(html, "predecessor", "In place of");
        other(html, "successor", "Replaced by");
        other(html, "draft", "Signed from the draft");
        html.end().end();
    }

    private void withdrawn(Html html, JsonNode note) {
        html.open("section", "class", "problem", "id", "withdrawn", "aria-label", "Withdrawal");
        html.element(
                "p",
                "Withdrawn by " + PersonName.words(note.path("by").asText()) + " at "
                        + Wording.stated(note.path("time").asText()) + ": "
                        + Wording.spelledOut(note.path("reason").asText()) + ".");
        if (!note.path("text").asText().isBlank()) {
            html.element("p", note.path("text").asText());
        }
        html.element("p", "Its objects are kept and are marked as rejected; they are not to be relied on.");
        html.end();
    }

    private boolean has(String field) {
        return record.hasNonNull(field);
    }

    private void other(Html html, String field, String words) {
        if (has(field)) {
            String uid = record.path(field).asText();
            html.open("div").element("dt", words).open("dd");
            html.element("a", uid, "href", "record?uid=" + Wording.inAddress(uid), "data-record", field);
            html.end().end();
        }
    }
}
