// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.HeldFrames;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.document.AnswerJson;
import dev.plumbline.document.CaseInputs;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.record.CaseDocument;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.Optional;

/** Plans and comparisons: a case document in, an answer or its drawing out, nothing kept. */
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

    private void plan(Context ctx) throws IOException {
        String type = DrawnAnswer.type(ctx);
        CaseDocument document = CaseJson.read(Bodies.json(ctx), Door.HTTP);
        CaseInputs inputs = CaseInputs.of(document, frames::geometry);
        Comparison alone = Comparison.planOnly(inputs.plan(), inputs.observations());
        if (type.equals(DrawnAnswer.JSON)) {
            answer(ctx, answers.plan(document, alone.plan()));
        } else {
            new DrawnAnswer(frames, document, inputs).plan(alone).send(ctx, type);
        }
    }

    private void compare(Context ctx) throws IOException {
        String type = DrawnAnswer.type(ctx);
        CaseDocument document = CaseJson.read(Bodies.json(ctx), Door.HTTP);
        CaseInputs inputs = CaseInputs.of(document, frames::geometry);
        Comparison comparison = Comparison.of(inputs.plan(), inputs.observations());
        if (type.equals(DrawnAnswer.JSON)) {
            answer(ctx, answers.comparison(document, comparison));
        } else {
            Optional<String> wanted = Optional.ofNullable(ctx.queryParam("observation"));
            new DrawnAnswer(frames, document, inputs)
                    .comparison(comparison, wanted)
                    .send(ctx, type);
        }
    }

    private static void answer(Context ctx, ObjectNode answer) {
        ctx.header("Vary", "Accept").contentType(DrawnAnswer.JSON).result(answer.toString());
    }
}
