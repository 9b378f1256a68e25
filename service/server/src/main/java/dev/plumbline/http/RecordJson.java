// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.StoredRevision;
import dev.plumbline.document.AnswerJson;
import dev.plumbline.document.CaseJson;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.RecordRevision;
import java.time.format.DateTimeFormatter;
import java.util.List;

/** Cases and records as answers. */
final class RecordJson {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private RecordJson() {}

    /** What is said of a case that was kept. */
    static ObjectNode kept(CaseDocument document) {
        String caseId = document.caseId().orElseThrow();
        return JSON.objectNode().put("caseId", caseId).put("location", "/v1/cases/" + caseId);
    }

    /** What is said of a record wherever it is named. */
    static ObjectNode named(StoredRevision revision) {
        ObjectNode node = JSON.objectNode()
                .put("recordUid", revision.reportUid())
                .put("caseId", revision.caseId())
                .put("revision", revision.revision())
                .put("state", revision.state().word())
                .put("time", revision.time().format(DateTimeFormatter.ISO_OFFSET_DATE_TIME))
                .put("location", "/v1/records/" + revision.reportUid());
        ArrayNode objects = node.putArray("objects");
        revision.objects().forEach(objects::add);
        return node;
    }

    static ObjectNode list(List<StoredRevision> revisions) {
        ObjectNode answer = JSON.objectNode();
        ArrayNode rows = answer.putArray("records");
        revisions.forEach(revision -> rows.add(named(revision)));
        answer.set("cautions", AnswerJson.cautions());
        return answer;
    }

    /** A record with the case it says and what is computed from it. */
    static ObjectNode whole(StoredRevision stored, RecordRevision revision, AnswerJson answers) {
        ObjectNode answer = named(stored);
        answer.set("case", CaseJson.write(revision.document()));
        answer.setAll(answers.comparison(revision.document(), revision.comparison()));
        return answer;
    }
}
