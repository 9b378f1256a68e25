// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.Tag;
import dev.plumbline.document.AnswerJson;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The cases that nobody has signed, those that changed last first. */
public final class CaseList {
    private final Store store;
    private final Cases cases;

    public CaseList(Archive archive, Cases cases) {
        this.store = archive.store();
        this.cases = cases;
    }

    /** The page asked for, and the cautions. */
    public ObjectNode json(CaseQuery query) {
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        ArrayNode rows = answer.putArray("cases");
        store.openCases().stream()
                .sorted(Comparator.comparing(OpenCase::changed).reversed().thenComparing(OpenCase::caseId))
                .map(this::row)
                .filter(row -> query.meets(row, cases.now().getOffset()))
                .skip(query.offset())
                .limit(query.limit())
                .forEach(row -> rows.add(row.json()));
        answer.set("cautions", AnswerJson.cautions());
        return answer;
    }

    private UnfinishedCase row(OpenCase open) {
        CaseDocument document = cases.held(open.caseId()).document();
        Optional<ObjectNode> frame = frame(document);
        return new UnfinishedCase(
                document,
                open.opened(),
                open.changed(),
                frame.flatMap(attributes -> text(attributes, Tag.PATIENT_ID)),
                frame.flatMap(attributes -> text(attributes, Tag.PATIENT_NAME)),
                draft(open.caseId()));
    }

    /** What the index tells of the planned frame; empty where it is not held. */
    private Optional<ObjectNode> frame(CaseDocument document) {
        return document.frame() instanceof FrameRef.Held held
                ? store.object(held.sopInstanceUid()).map(HeldObject::attributeTree)
                : Optional.empty();
    }

    private static Optional<String> text(ObjectNode attributes, int tag) {
        return Optional.of(IndexedAttributes.text(attributes, tag)).filter(text -> !text.isBlank());
    }

    private Optional<String> draft(String caseId) {
        List<StoredRevision> revisions = store.revisions(caseId);
        return revisions.isEmpty()
                ? Optional.empty()
                : Optional.of(revisions.get(revisions.size() - 1).reportUid());
    }
}
