// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import dev.plumbline.archive.CaseList;
import dev.plumbline.archive.CaseQuery;
import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.RecordQuery;
import dev.plumbline.archive.StoredRevision;
import dev.plumbline.dicom.RecordPages;
import dev.plumbline.dispatch.DispatchDesk;
import dev.plumbline.dispatch.DispatchJson;
import dev.plumbline.pages.ListPage;
import dev.plumbline.pages.LogPage;
import dev.plumbline.pages.MarkPage;
import dev.plumbline.pages.PageFile;
import dev.plumbline.pages.ProblemPage;
import dev.plumbline.pages.RecordPage;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The service's own pages. They show what the routes answer and do nothing that no route does. */
final class PageRoutes {
    /** Nothing but what this service sends itself, and nothing inline. Source: Content Security Policy Level 3 (W3C). */
    private static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self';"
            + " connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    private static final int ROWS = 50;
    private static final List<Dispatch.State> UNPROVED =
            List.of(Dispatch.State.HELD, Dispatch.State.QUEUED, Dispatch.State.SENT);

    private final Doors.Rooms rooms;
    private final CaseList cases;

    PageRoutes(Doors.Rooms rooms) {
        this.rooms = rooms;
        this.cases = new CaseList(rooms.archive(), rooms.cases());
    }

    void register(RoutesConfig routes) {
        routes.get("/pages/list", this::list);
        routes.get(
                "/pages/mark",
                ctx -> send(ctx, MarkPage.html(rooms.cases().site().blocks())));
        routes.get("/pages/log", ctx -> send(ctx, LogPage.html(rooms.cases().site())));
        routes.get("/pages/record", this::record);
        routes.get("/pages/files/{file}", PageRoutes::file);
    }

    private void list(Context ctx) {
        Map<String, String> typed = Parameters.of(ctx);
        Map<String, String> asked = typed.entrySet().stream()
                .filter(entry -> ListPage.FIELDS.contains(entry.getKey()))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
        Optional<Problem> problem = Optional.empty();
        ListPage.Answers answers;
        try {
            answers = answers(asked);
        } catch (Refusal refusal) {
            problem = Optional.of(refusal.problem());
            answers = answers(Map.of());
            ctx.status(Problems.of(refusal.problem().getClass()).status());
        }
        send(
                ctx,
                ListPage.html(
                        answers,
                        new ListPage.Search(asked, problem),
                        rooms.cases().site().blocks(),
                        rooms.cases().now().getOffset()));
    }

    private ListPage.Answers answers(Map<String, String> asked) {
        return new ListPage.Answers(
                cases.json(CaseQuery.of(asked)),
                rooms.records().list(RecordQuery.of(asked, ROWS, ROWS)).json(),
                unproved(),
                rooms.traffic().status().get().json());
    }

    private ArrayNode unproved() {
        DispatchDesk desk = rooms.traffic().desk();
        ArrayNode all = JsonNodeFactory.instance.arrayNode();
        for (Dispatch.State state : UNPROVED) {
            List<Dispatch> found = desk.list(Optional.of(state), ROWS, 0);
            DispatchJson.list(desk, found).path("dispatches").forEach(row -> {
                if (row.path("released").isNull()) {
                    all.add(row);
                }
            });
        }
        return all;
    }

    private void record(Context ctx) {
        try {
            StoredRevision stored = rooms.records()
                    .revision(Optional.ofNullable(ctx.queryParam("uid")).orElse(""));
            if (stored.state() == StoredRevision.State.WITHDRAWN) {
                String withdrawn = stored.change().orElseThrow().predecessor();
                ctx.redirect("record?uid=" + withdrawn, HttpStatus.SEE_OTHER);
                return;
            }
            send(ctx, page(stored));
        } catch (Refusal refusal) {
            ctx.status(Problems.of(refusal.problem().getClass()).status());
            send(ctx, ProblemPage.html(refusal.problem()));
        }
    }

    private String page(StoredRevision stored) {
        RecordPages pages = rooms.records().pages(stored);
        DispatchDesk desk = rooms.traffic().desk();
        List<Dispatch> ways = desk.ofCase(stored.caseId()).stream()
                .filter(dispatch -> dispatch.addressed().revision() == stored.revision())
                .toList();
        RecordPage.Content content = new RecordPage.Content(
                RecordJson.whole(
                        rooms.records().standing(stored), rooms.records().read(stored), rooms.answers()),
                pages.readout(),
                pages.captions(),
                DispatchJson.list(desk, ways).path("dispatches"));
        return RecordPage.html(
                content, rooms.cases().site().blocks(), rooms.cases().now().getOffset());
    }

    private static void file(Context ctx) {
        PageFile file = PageFile.named(ctx.pathParam("file"))
                .orElseThrow(() ->
                        new Refusal(new Problem.NotHeld("", "The pages have no such file.", "See GET /pages/list.")));
        ctx.contentType(file.mediaType()).result(file.content());
    }

    private static void send(Context ctx, String page) {
        ctx.header("Content-Security-Policy", POLICY);
        ctx.header("Referrer-Policy", "no-referrer");
        ctx.header("Cross-Origin-Opener-Policy", "same-origin");
        ctx.header("Cross-Origin-Resource-Policy", "same-origin");
        ctx.contentType("text/html; charset=utf-8").result(page);
    }
}
