// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.archive.RecordLife;
import dev.plumbline.archive.RecordList;
import dev.plumbline.archive.RecordQuery;
import dev.plumbline.archive.Records;
import dev.plumbline.archive.Standing;
import dev.plumbline.archive.StoredRevision;
import dev.plumbline.dicom.RecordPages;
import dev.plumbline.document.AnswerJson;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.document.StrictJson;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Cases opened, and records: kept, listed, handed out in the form that was asked for. */
final class RecordRoutes {
    private static final String DICOM = "application/dicom";
    private static final String JSON = "application/json";
    private static final String CSV = "text/csv";
    private static final String TEXT = "text/plain";
    private static final String HTML = "text/html";
    private static final String PDF = "application/pdf";
    private static final String SVG = "image/svg+xml";
    private static final String UTF_8 = "; charset=utf-8";

    /** One record in each; the first where anything will do. */
    private static final String[] FORMS = {JSON, DICOM, TEXT, HTML, PDF, SVG};

    private final Records records;
    private final AnswerJson answers;

    RecordRoutes(Records records, AnswerJson answers) {
        this.records = records;
        this.answers = answers;
    }

    void register(RoutesConfig routes) {
        routes.post("/v1/cases", this::open);
        routes.post("/v1/records", this::file);
        routes.get("/v1/records", this::list);
        routes.get("/v1/records/{uid}", this::record);
        routes.post("/v1/records/{uid}/sign", ctx -> step(ctx, records.life()::sign));
        routes.post("/v1/records/{uid}/amend", ctx -> step(ctx, records.life()::amend));
        routes.post("/v1/records/{uid}/withdraw", ctx -> step(ctx, records.life()::withdraw));
    }

    private void open(Context ctx) {
        byte[] body = Bodies.json(ctx);
        CaseDocument document = CaseJson.read(body, Door.HTTP);
        answer(
                ctx,
                records.open(
                        document,
                        IdempotencyKey.of(ctx, body),
                        kept -> RecordJson.kept(kept).toString()));
    }

    private void file(Context ctx) {
        byte[] body = Bodies.json(ctx);
        CaseDocument document = document(StrictJson.read(body));
        answer(
                ctx,
                records.file(
                        document,
                        IdempotencyKey.of(ctx, body),
                        kept -> RecordJson.named(kept).toString()));
    }

    /** A whole case document, or only the identifier of one that is held. */
    private CaseDocument document(JsonNode json) {
        boolean onlyId =
                json.isObject() && json.size() == 1 && json.path("caseId").isTextual();
        return onlyId ? records.document(json.path("caseId").textValue()) : CaseJson.read(json, Door.HTTP);
    }

    private static void answer(Context ctx, Records.Reply reply) {
        String location = StrictJson.read(reply.body().getBytes(StandardCharsets.UTF_8))
                .path("location")
                .asText();
        ctx.status(reply.status())
                .header("Location", location)
                .contentType(JSON)
                .result(reply.body());
    }

    /** One step in the life of a record. */
    @FunctionalInterface
    private interface Doing {
        Records.Reply on(RecordLife.Step step, Records.Wording<Standing> wording);
    }

    private static void step(Context ctx, Doing doing) {
        byte[] body = Bodies.json(ctx);
        RecordLife.Step step = new RecordLife.Step(
                ctx.pathParam("uid"),
                StrictJson.read(body),
                Optional.ofNullable(ctx.header("If-Match")),
                IdempotencyKey.of(ctx, body));
        answer(ctx, doing.on(step, kept -> RecordJson.named(kept).toString()));
    }

    private void list(Context ctx) {
        String type = Accepted.of(ctx).single(JSON, CSV).orElseThrow(() -> Accepted.notAcceptable(JSON, CSV));
        boolean table = type.equals(CSV);
        RecordQuery query = RecordQuery.of(
                Parameters.of(ctx),
                table ? RecordQuery.WHOLE : RecordQuery.USUAL,
                table ? RecordQuery.WHOLE : RecordQuery.MOST);
        RecordList list = records.list(query);
        ctx.contentType(table ? CSV + "; header=present" + UTF_8 : JSON)
                .result(table ? list.csv() : list.json().toString());
    }

    private void record(Context ctx) {
        StoredRevision stored = records.revision(ctx.pathParam("uid"));
        Standing standing = records.standing(stored);
        ctx.header("ETag", standing.tag());
        String type = Accepted.of(ctx).single(FORMS).orElseThrow(() -> Accepted.notAcceptable(FORMS));
        switch (type) {
            case DICOM -> ctx.disableCompression().contentType(DICOM).result(records.report(stored));
            case PDF -> ctx.contentType(PDF).result(records.pages(stored).pdf());
            case SVG -> ctx.contentType(SVG).result(drawing(ctx, records.pages(stored)));
            case HTML ->
                ctx.header("Content-Security-Policy", "default-src 'none'; style-src 'unsafe-inline'; img-src data:")
                        .contentType(HTML + UTF_8)
                        .result(records.pages(stored).html());
            case TEXT -> ctx.contentType(TEXT + UTF_8).result(records.text(stored));
            default ->
                ctx.contentType(JSON)
                        .result(RecordJson.whole(standing, records.read(stored), answers)
                                .toString());
        }
    }

    /** All drawings below each other, or the one that is asked for. */
    private static String drawing(Context ctx, RecordPages pages) {
        String number = ctx.queryParam("drawing");
        if (number == null) {
            return pages.svg();
        }
        if (!number.matches("[1-9]\\d{0,3}")) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The query parameter drawing must be a whole number.", "Give 1 for the planned frame."));
        }
        return pages.svg(Integer.parseInt(number));
    }
}
