// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.ObservedFrame;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Signature;
import java.time.OffsetDateTime;
import java.util.List;

/** From a case document to the first revision of its record, with what a record asks beyond a plan. */
public final class CaseRecord {
    private static final int FIRST = 1;

    private CaseRecord() {}

    /**
     * Computes the first revision.
     *
     * @param document with its identifier
     * @param draftTime counts only where the document is not signed
     * @throws Refusal where the case can be planned but not recorded: a frame without DICOM, a signature without intent
     */
    public static RecordRevision revision(CaseDocument document, CaseInputs inputs, OffsetDateTime draftTime) {
        requireRecordable(document);
        Comparison comparison = Comparison.of(inputs.plan(), inputs.observations());
        OffsetDateTime time = document.signature().map(Signature::time).orElse(draftTime);
        return new RecordRevision(document.caseId().orElseThrow(), FIRST, document, comparison, time);
    }

    /**
     * Refuses a case that cannot become a record, before anything is computed or stored.
     *
     * @throws Refusal with the field that stands in the way
     */
    public static void requireRecordable(CaseDocument document) {
        requireDicom(document.frame(), "/frame");
        List<ObservedFrame> observations = document.observations();
        for (int i = 0; i < observations.size(); i++) {
            requireDicom(observations.get(i).frame(), "/observations/" + i + "/frame");
        }
        if (document.signature().isPresent() && document.intent().isEmpty()) {
            throw new Refusal(new Problem.MissingField(
                    "/intent", "State the path that was meant before signing: as it was proposed, or moved."));
        }
    }

    private static void requireDicom(FrameRef frame, String pointer) {
        if (frame instanceof FrameRef.Stated) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    "A record needs a DICOM frame; a stated scale is enough for a plan only.",
                    "Name the frame by sopInstanceUid, or by file on the command line."));
        }
    }

    /** What the record says: {@code { "case", "plan", "observations", "deviations", "cautions" }}. */
    public static ObjectNode json(RecordRevision revision) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.set("case", CaseJson.write(revision.document()));
        node.setAll(AnswerJson.comparison(revision.comparison()));
        return node;
    }
}
