// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.document.AnswerJson;
import dev.plumbline.document.StrictJson;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;

/** The records that a query finds, in one form for all doors. */
public final class RecordList {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private final Store store;
    private final RecordQuery query;

    public RecordList(Store store, RecordQuery query) {
        this.store = store;
        this.query = query;
    }

    /** The page asked for, how many there are in all, and the cautions. */
    public ObjectNode json() {
        ObjectNode answer = JSON.objectNode();
        answer.set("records", rows());
        answer.put("total", store.countRecords(query));
        answer.set("cautions", AnswerJson.cautions());
        return answer;
    }

    /** The page asked for as a table, {@link RecordTable}. */
    public String csv() {
        return RecordTable.csv(rows());
    }

    private ArrayNode rows() {
        ArrayNode rows = JSON.arrayNode();
        for (RecordListed listed : store.records(query)) {
            Standing standing = Standing.of(
                    listed.revision(), store.revisions(listed.revision().caseId()));
            ObjectNode row = named(standing);
            row.setAll((ObjectNode) StrictJson.read(listed.content().getBytes(StandardCharsets.UTF_8)));
            rows.add(row);
        }
        return rows;
    }

    /** What is said of a record wherever it is named. */
    public static ObjectNode named(Standing standing) {
        StoredRevision revision = standing.revision();
        ObjectNode node = JSON.objectNode()
                .put("recordUid", revision.reportUid())
                .put("caseId", revision.caseId())
                .put("revision", revision.revision())
                .put("state", standing.state())
                .put("current", standing.current())
                .put("time", revision.time().format(DateTimeFormatter.ISO_OFFSET_DATE_TIME))
                .put("location", "/v1/records/" + revision.reportUid())
                .put("predecessor", standing.predecessor().orElse(null))
                .put("successor", standing.successor().orElse(null))
                .put(
                        "withdrawal",
                        standing.withdrawal().map(StoredRevision::reportUid).orElse(null));
        ArrayNode objects = node.putArray("objects");
        revision.objects().forEach(objects::add);
        return node;
    }
}
