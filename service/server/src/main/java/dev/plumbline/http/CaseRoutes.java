// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.CaseList;
import dev.plumbline.archive.CaseQuery;
import dev.plumbline.archive.Cases;
import dev.plumbline.document.CasePart;
import dev.plumbline.document.LogJson;
import dev.plumbline.document.SessionJson;
import dev.plumbline.document.StrictJson;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;

/** Cases while they grow, what follows from their logs, and the sessions that link them. */
final class CaseRoutes {
    private static final int CREATED = 201;
    private static final int OK = 200;

    private final Cases cases;
    private final CaseList list;

    CaseRoutes(Cases cases, CaseList list) {
        this.cases = cases;
        this.list = list;
    }

    void register(RoutesConfig routes) {
        routes.get(
                "/v1/cases",
                ctx -> json(ctx, list.json(CaseQuery.of(Parameters.of(ctx))).toString()));
        routes.get("/v1/cases/{caseId}", this::document);
        routes.get("/v1/cases/{caseId}/log", this::log);
        routes.get("/v1/sessions/{session}", this::session);
        routes.post("/v1/cases/{caseId}/observations/{observation}", this::say);
        for (CasePart part : CasePart.values()) {
            routes.post("/v1/cases/{caseId}/" + part.field(), ctx -> append(ctx, part));
        }
    }

    private void document(Context ctx) {
        Cases.Held held = cases.held(ctx.pathParam("caseId"));
        ctx.header("ETag", held.growing().tag());
        json(ctx, held.growing().canonical());
    }

    private void append(Context ctx, CasePart part) {
        String caseId = ctx.pathParam("caseId");
        answer(ctx, caseId, cases.append(caseId, part, StrictJson.read(Bodies.json(ctx)), seen(ctx)));
    }

    private void say(Context ctx) {
        String caseId = ctx.pathParam("caseId");
        answer(
                ctx,
                caseId,
                cases.say(caseId, ctx.pathParam("observation"), StrictJson.read(Bodies.json(ctx)), seen(ctx)));
    }

    private static Optional<String> seen(Context ctx) {
        return Optional.ofNullable(ctx.header("If-Match"));
    }

    private static void answer(Context ctx, String caseId, Cases.Appended done) {
        ObjectNode answer = JsonNodeFactory.instance.objectNode().put("caseId", caseId);
        texts(answer.putArray("appended"), done.appended());
        texts(answer.putArray("known"), done.known());
        answer.put("location", "/v1/cases/" + caseId);
        ctx.status(done.appended().isEmpty() ? OK : CREATED).header("ETag", done.tag());
        json(ctx, answer.toString());
    }

    private void log(Context ctx) {
        Cases.Held held = cases.held(ctx.pathParam("caseId"));
        json(ctx, LogJson.of(held.document(), cases.logFacts(held)).toString());
    }

    private void session(Context ctx) {
        String session = ctx.pathParam("session");
        json(
                ctx,
                SessionJson.of(
                                session,
                                cases.session(session).stream()
                                        .map(Cases.Held::document)
                                        .toList(),
                                cases.site(),
                                cases.now())
                        .toString());
    }

    private static void texts(ArrayNode array, List<String> texts) {
        texts.forEach(array::add);
    }

    private static void json(Context ctx, String text) {
        ctx.contentType("application/json").result(text);
    }
}
