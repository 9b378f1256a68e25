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
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;

/** Plans and comparisons: a case document in, an answer out, nothing kept. */
final class PlanRoutes {
    private final HeldFrames frames;

    PlanRoutes(HeldFrames frames) {
        this.frames = frames;
    }

    void register(RoutesConfig routes) {
        routes.post("/v1/plans", this::plan);
        routes.post("/v1/comparisons", this::compare);
    }

    private void plan(Context ctx) {
        answer(ctx, AnswerJson.plan(Plan.of(inputs(ctx).plan())));
    }

    private void compare(Context ctx) {
        CaseInputs inputs = inputs(ctx);
        answer(ctx, AnswerJson.comparison(Comparison.of(inputs.plan(), inputs.observations())));
    }

    private CaseInputs inputs(Context ctx) {
        return CaseInputs.of(CaseJson.read(Bodies.json(ctx), Door.HTTP), frames::geometry);
    }

    private static void answer(Context ctx, ObjectNode answer) {
        ctx.contentType("application/json").result(answer.toString());
    }
}
