// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.plan.Plan;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import java.util.List;

/** What must be so before a record is written. */
final class RecordRules {
    private RecordRules() {}

    static void check(RecordSource source, List<FramesUsed.Use> used) {
        CaseDocument document = source.revision().document();
        if (document.signature().isPresent()
                && source.revision().comparison().plan().source() == Plan.Source.PROPOSED) {
            throw new Refusal(new Problem.MissingField(
                    "/intent", "State which path is meant, as proposed or moved, before the record is signed."));
        }
        if (document.signature().filter(s -> !new Timestamp(s.time()).isWhole()).isPresent()) {
            throw new Refusal(new Problem.InvalidValue(
                    "/signature/time",
                    "A DICOM time holds microseconds and offsets of whole minutes.",
                    "Give at most six digits of a second."));
        }
        DataSet planned = source.planned().frame().header();
        OrderCheck.require(document, planned);
        for (FramesUsed.Use use : used) {
            belongsTogether(planned, use.placed().frame().header(), use.pointer());
        }
    }

    private static void belongsTogether(DataSet planned, DataSet frame, String pointer) {
        if (!ImageIdentity.samePatient(frame, planned)) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    "This frame belongs to another patient than the planned one.",
                    "Name a frame of the same patient."));
        }
        if (!ImageIdentity.sameStudy(frame, planned)) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    "This frame belongs to another study than the planned one; a record stands in one study.",
                    "Name a frame of the same study, or write a case for each study."));
        }
    }
}
