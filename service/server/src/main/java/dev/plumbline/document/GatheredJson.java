// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.intake.Gathered;
import dev.plumbline.intake.Gathered.FrameKey;
import dev.plumbline.intake.MarkMeaning;
import java.util.List;
import java.util.Optional;

/** The account of marks gathered in a study, as JSON. */
public final class GatheredJson {
    private GatheredJson() {}

    /**
     * The account of a study.
     *
     * @param caseId the case they are attached to, if any
     * @param lacks what the case still lacks, in words
     */
    public static ObjectNode of(String study, Gathered gathered, Optional<String> caseId, List<Lack> lacks) {
        ObjectNode root = JsonNodeFactory.instance.objectNode().put("studyInstanceUid", study);
        caseId.ifPresentOrElse(id -> root.put("caseId", id), () -> root.putNull("caseId"));
        root.setAll(of(gathered));
        ArrayNode lacking = root.putArray("lacks");
        lacks.forEach(lack -> lacking.addObject().put("field", lack.field()).put("text", lack.text()));
        return root;
    }

    /** The marks alone, without a case. */
    public static ObjectNode of(Gathered gathered) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        ArrayNode placed = root.putArray("placed");
        for (Gathered.Placed mark : gathered.placed()) {
            ObjectNode node = placed.addObject()
                    .put("means", mark.meaning().word())
                    .put("name", mark.name())
                    .put("object", mark.from());
            frame(node, mark.frame());
            ArrayNode points = node.putArray("points");
            mark.points()
                    .forEach(point ->
                            points.addObject().put("column", point.column()).put("row", point.row()));
        }
        ArrayNode unmatched = root.putArray("unmatched");
        for (Gathered.Unmatched mark : gathered.unmatched()) {
            ObjectNode node = unmatched
                    .addObject()
                    .put("object", mark.object())
                    .put("at", mark.at())
                    .put("drawnAs", mark.form().words())
                    .put("why", mark.why());
            mark.labels().forEach(node.putArray("labels")::add);
        }
        ArrayNode questions = root.putArray("questions");
        for (Gathered.Question question : gathered.questions()) {
            ObjectNode node =
                    questions.addObject().put("object", question.object()).put("at", question.at());
            node.put("means", question.meaning().map(MarkMeaning::word).orElse(null))
                    .put("text", question.text());
        }
        ArrayNode refused = root.putArray("refused");
        for (Gathered.RefusedObject object : gathered.refused()) {
            refused.addObject()
                    .put("object", object.object())
                    .put("at", object.at())
                    .put("why", object.why())
                    .put("remedy", object.remedy());
        }
        ArrayNode remarks = root.putArray("remarks");
        for (Gathered.Remark remark : gathered.remarks()) {
            remarks.addObject()
                    .put("object", remark.object())
                    .put("at", remark.at())
                    .put("text", remark.text());
        }
        return root;
    }

    private static void frame(ObjectNode node, FrameKey frame) {
        node.putObject("frame").put("sopInstanceUid", frame.image()).put("frameNumber", frame.number());
    }
}
