// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.Cases;
import dev.plumbline.archive.HeldFrames;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.document.CaseInputs;
import dev.plumbline.document.SightJson;
import dev.plumbline.document.StrictJson;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.SightSoFar;
import dev.plumbline.sight.NeedleInside;
import dev.plumbline.sight.SightQuestion;
import dev.plumbline.sight.SightSearch;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;

/** The next single action for a needle that is not seen, by a question or by the log of a case; nothing is kept. */
final class SightRoutes {
    private final SightSearch search;
    private final Cases cases;
    private final HeldFrames frames;

    SightRoutes(SightSearch search, Cases cases, HeldFrames frames) {
        this.search = search;
        this.cases = cases;
        this.frames = frames;
    }

    void register(RoutesConfig routes) {
        routes.post("/v1/sight/next", this::next);
        routes.get("/v1/cases/{caseId}/sight", this::ofCase);
    }

    private void next(Context ctx) {
        answer(ctx, SightJson.of(search.next(SightJson.question(StrictJson.read(Bodies.json(ctx))))));
    }

    private void ofCase(Context ctx) {
        CaseDocument document = cases.held(ctx.pathParam("caseId")).document();
        ObjectNode notes = JsonNodeFactory.instance.objectNode();
        SightQuestion question =
                SightSoFar.question(document.bedside().log(), document.approach(), inside(document, notes));
        ObjectNode answer = SightJson.of(question, search.next(question));
        answer.setAll(notes);
        answer(ctx, answer);
    }

    /** Somebody who looks for a needle gets an answer also where the plan has none, and is told so. */
    private NeedleInside inside(CaseDocument document, ObjectNode notes) {
        try {
            CaseInputs inputs = CaseInputs.of(document, frames::geometry);
            Comparison alone = Comparison.planOnly(inputs.plan(), inputs.observations());
            return NeedleInside.planned(
                    alone.plan().readings(), inputs.plan().probe().beamThicknessMm());
        } catch (Refusal refusal) {
            notes.put("withoutPlanBecause", refusal.problem().detail());
            return NeedleInside.UNKNOWN;
        }
    }

    private static void answer(Context ctx, ObjectNode answer) {
        ctx.contentType("application/json").result(answer.toString());
    }
}
