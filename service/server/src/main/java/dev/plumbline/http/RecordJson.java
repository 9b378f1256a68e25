// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.RecordList;
import dev.plumbline.archive.Standing;
import dev.plumbline.archive.StoredRevision;
import dev.plumbline.document.AnswerJson;
import dev.plumbline.document.CaseJson;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.RecordRevision;
import java.time.format.DateTimeFormatter;

/** Cases and records as answers. */
final class RecordJson {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private RecordJson() {}

    /** What is said of a case that was kept. */
    static ObjectNode kept(CaseDocument document) {
        String caseId = document.caseId().orElseThrow();
        return JSON.objectNode().put("caseId", caseId).put("location", "/v1/cases/" + caseId);
    }

    /** What is said of a record that was kept. */
    static ObjectNode named(Standing standing) {
        return RecordList.named(standing);
    }

    /** A record with what came before and after it, the case it says and what is computed from that. */
    static ObjectNode whole(Standing standing, RecordRevision revision, AnswerJson answers) {
        ObjectNode answer = named(standing);
        standing.draft().ifPresent(draft -> answer.put("draft", draft));
        StoredRevision stored = standing.revision();
        stored.change()
                .filter(change -> stored.state() == StoredRevision.State.SIGNED)
                .ifPresent(change -> answer.putObject("amendment")
                        .put("reason", change.reason())
                        .put("changed", change.words()));
        standing.withdrawal().ifPresent(note -> answer.set("withdrawn", withdrawn(note)));
        if (stored.state() == StoredRevision.State.WITHDRAWN) {
            answer.set("withdrawn", withdrawn(stored));
        }
        answer.set("case", CaseJson.write(revision.document()));
        answer.setAll(answers.comparison(revision.document(), revision.comparison()));
        return answer;
    }

    private static ObjectNode withdrawn(StoredRevision note) {
        StoredRevision.Change why = note.change().orElseThrow();
        return JSON.objectNode()
                .put("reason", why.reason())
                .put("text", why.words())
                .put("by", why.by())
                .put("time", note.time().format(DateTimeFormatter.ISO_OFFSET_DATE_TIME));
    }
}
