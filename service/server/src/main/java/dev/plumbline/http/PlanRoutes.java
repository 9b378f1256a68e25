// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.HeldFrames;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.document.AnswerJson;
import dev.plumbline.document.CaseInputs;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.plan.Plan;
import dev.plumbline.record.CaseDocument;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;

/** Plans and comparisons: a case document in, an answer out, nothing kept. */
final class PlanRoutes {
    private final HeldFrames frames;
    private final AnswerJson answers;

    PlanRoutes(HeldFrames frames, AnswerJson answers) {
        this.frames = frames;
        this.answers = answers;
    }

    void register(RoutesConfig routes) {
        routes.post("/v1/plans", this::plan);
        routes.post("/v1/comparisons", this::compare);
    }

    private void plan(Context ctx) {
        CaseDocument document = document(ctx);
        answer(ctx, answers.plan(document, Plan.of(inputs(document).plan())));
    }

    private void compare(Context ctx) {
        CaseDocument document = document(ctx);
        CaseInputs inputs = inputs(document);
        answer(ctx, answers.comparison(document, Comparison.of(inputs.plan(), inputs.observations())));
    }

    private static CaseDocument document(Context ctx) {
        return CaseJson.read(Bodies.json(ctx), Door.HTTP);
    }

    private CaseInputs inputs(CaseDocument document) {
        return CaseInputs.of(document, frames::geometry);
    }

    private static void answer(Context ctx, ObjectNode answer) {
        ctx.contentType("application/json").result(answer.toString());
    }
}
