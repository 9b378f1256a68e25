// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import dev.plumbline.archive.CaseList;
import dev.plumbline.archive.CaseQuery;
import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.RecordQuery;
import dev.plumbline.dispatch.DispatchDesk;
import dev.plumbline.dispatch.DispatchJson;
import dev.plumbline.pages.ListPage;
import dev.plumbline.pages.MarkPage;
import dev.plumbline.pages.PageFile;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
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
