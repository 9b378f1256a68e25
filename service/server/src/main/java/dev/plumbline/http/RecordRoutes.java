// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.document.AnswerJson;
import dev.plumbline.document.Canonical;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.document.StrictJson;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.Optional;

/** Cases and records: kept, listed, handed out as JSON or DICOM. */
final class RecordRoutes {
    private static final String DICOM = "application/dicom";
    private static final String JSON = "application/json";

    private final RecordDesk records;

    RecordRoutes(RecordDesk records) {
        this.records = records;
    }

    void register(RoutesConfig routes) {
        routes.post("/v1/cases", this::open);
        routes.get("/v1/cases/{caseId}", this::stored);
        routes.post("/v1/records", this::file);
        routes.get("/v1/records", this::list);
        routes.get("/v1/records/{uid}", this::record);
    }

    private void open(Context ctx) {
        byte[] body = Bodies.json(ctx);
        answer(ctx, records.open(CaseJson.read(body, Door.HTTP), IdempotencyKey.of(ctx, body)));
    }

    private void stored(Context ctx) {
        CaseDocument document = records.stored(ctx.pathParam("caseId"));
        ctx.contentType(JSON).result(Canonical.text(CaseJson.write(document)));
    }

    private void file(Context ctx) {
        byte[] body = Bodies.json(ctx);
        answer(ctx, records.file(document(StrictJson.read(body)), IdempotencyKey.of(ctx, body)));
    }

    /** A whole case document, or only the identifier of one that is held. */
    private CaseDocument document(JsonNode json) {
        boolean onlyId =
                json.isObject() && json.size() == 1 && json.path("caseId").isTextual();
        return onlyId ? records.stored(json.path("caseId").textValue()) : CaseJson.read(json, Door.HTTP);
    }

    private static void answer(Context ctx, RecordDesk.Answer answer) {
        ctx.status(answer.status())
                .header("Location", answer.body().path("location").asText());
        ctx.contentType(JSON).result(answer.body().toString());
    }

    private void list(Context ctx) {
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        ArrayNode rows = answer.putArray("records");
        Page page = Page.of(ctx);
        records.list(Optional.ofNullable(ctx.queryParam("caseId")), page.limit(), page.offset())
                .forEach(rows::add);
        answer.set("cautions", AnswerJson.cautions());
        ctx.contentType(JSON).result(answer.toString());
    }

    private void record(Context ctx) {
        String uid = ctx.pathParam("uid");
        String type = Accepted.of(ctx).single(JSON, DICOM).orElseThrow(() -> Accepted.notAcceptable(JSON, DICOM));
        if (type.equals(DICOM)) {
            ctx.disableCompression().contentType(DICOM).result(records.report(uid));
        } else {
            ctx.contentType(JSON).result(records.record(uid).toString());
        }
    }

    /** Which rows of a list are wanted. */
    record Page(int limit, int offset) {
        private static final int USUAL = 100;
        private static final int MOST = 1000;

        static Page of(Context ctx) {
            return new Page(Math.min(number(ctx, "limit", USUAL), MOST), number(ctx, "offset", 0));
        }

        private static int number(Context ctx, String name, int absent) {
            String text = Optional.ofNullable(ctx.queryParam(name)).orElse(String.valueOf(absent));
            if (!text.matches("\\d{1,9}")) {
                throw new Refusal(new Problem.InvalidValue(
                        "", "The query parameter " + name + " must be a whole number.", "Give 0 or more."));
            }
            return Integer.parseInt(text);
        }
    }
}
