// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.plan.Approach;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Context;
import java.time.Instant;
import java.util.Optional;

/**
 * A case that nobody has signed, as a list tells of it.
 *
 * @param patientId of the planned frame; empty where it is not held or names none
 * @param draft UID of the newest draft
 */
record UnfinishedCase(
        CaseDocument document,
        Instant opened,
        Instant changed,
        Optional<String> patientId,
        Optional<String> patientName,
        Optional<String> draft) {
    Context context() {
        return document.context();
    }

    ObjectNode json() {
        String caseId = document.caseId().orElseThrow();
        ObjectNode row = JsonNodeFactory.instance
                .objectNode()
                .put("caseId", caseId)
                .put("location", "/v1/cases/" + caseId)
                .put("opened", opened.toString())
                .put("changed", changed.toString())
                .put("patientId", patientId.orElse(null))
                .put("patientName", patientName.orElse(null))
                .put("block", context().block().orElse(null))
                .put("laterality", context().laterality().map(Laterality::word).orElse(null))
                .put("approach", document.technique().map(Approach::word).orElse(null))
                .put("operator", context().operator().map(Context.Person::name).orElse(null))
                .put("chosen", document.intent().isPresent())
                .put("observations", document.observations().size())
                .put("events", document.bedside().events().size());
        return row.put("draft", draft.orElse(null));
    }
}
