// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.Probe;
import dev.plumbline.needle.Needle;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Constraints;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.PlanMarks;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Everything known about one block on one side of one patient, as stated and nothing added; what is absent was not said.
 *
 * @param caseId given by the client; empty until one is made
 * @param technique the approach; empty while nobody has said it, and nothing can be computed
 * @param bedside what was said and done around the needle
 * @param signature a case without one is a draft
 */
public record CaseDocument(
        Optional<String> caseId,
        Optional<Approach> technique,
        FrameRef frame,
        Probe probe,
        PlanMarks marks,
        Needle needle,
        Optional<Intent> intent,
        Constraints constraints,
        InputUncertainty uncertainty,
        List<ObservedFrame> observations,
        Context context,
        Bedside bedside,
        Optional<Signature> signature) {
    /** Schema name of the document this version reads and writes. */
    public static final String SCHEMA = "plumbline-case/1";

    /** Remedy where the approach is needed and nobody has said it. */
    public static final String SAY_THE_APPROACH =
            "Say inPlane or outOfPlane; of a case that is held, with POST /v1/cases/{caseId}/approach.";

    public CaseDocument {
        observations = List.copyOf(observations);
    }

    /** A case of which nothing was said at the bedside. */
    public CaseDocument(
            Optional<String> caseId,
            Approach approach,
            FrameRef frame,
            Probe probe,
            PlanMarks marks,
            Needle needle,
            Optional<Intent> intent,
            Constraints constraints,
            InputUncertainty uncertainty,
            List<ObservedFrame> observations,
            Context context,
            Optional<Signature> signature) {
        this(
                caseId,
                Optional.of(approach),
                frame,
                probe,
                marks,
                needle,
                intent,
                constraints,
                uncertainty,
                observations,
                context,
                Bedside.NOTHING_STATED,
                signature);
    }

    /**
     * The approach, for what cannot be done without.
     *
     * @throws Refusal {@link Problem.MissingField} while nobody has said it; it is never guessed
     */
    public Approach approach() {
        return technique.orElseThrow(() -> new Refusal(new Problem.MissingField("/approach", SAY_THE_APPROACH)));
    }

    public CaseDocument withCaseId(String id) {
        return new CaseDocument(
                Optional.of(id),
                technique,
                frame,
                probe,
                marks,
                needle,
                intent,
                constraints,
                uncertainty,
                observations,
                context,
                bedside,
                signature);
    }

    /** The same case under another signature. */
    public CaseDocument withSignature(Signature other) {
        return new CaseDocument(
                caseId,
                technique,
                frame,
                probe,
                marks,
                needle,
                intent,
                constraints,
                uncertainty,
                observations,
                context,
                bedside,
                Optional.of(other));
    }

    /** The same case with other content of the bedside. */
    public CaseDocument withBedside(Bedside other) {
        return new CaseDocument(
                caseId,
                technique,
                frame,
                probe,
                marks,
                needle,
                intent,
                constraints,
                uncertainty,
                observations,
                context,
                other,
                signature);
    }

    /** The same case with its frames named in another way, in the order of the observations. */
    public CaseDocument withFrames(FrameRef planned, List<FrameRef> observed) {
        if (observed.size() != observations.size()) {
            throw new IllegalArgumentException("Every observation has one frame.");
        }
        return new CaseDocument(
                caseId,
                technique,
                planned,
                probe,
                marks,
                needle,
                intent,
                constraints,
                uncertainty,
                IntStream.range(0, observed.size())
                        .mapToObj(i -> new ObservedFrame(observations.get(i).marks(), observed.get(i)))
                        .toList(),
                context,
                bedside,
                signature);
    }
}
