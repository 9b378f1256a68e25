// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.dispatch.DispatchDesk;
import dev.plumbline.dispatch.DispatchJson;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Records on their way to other archives: looked at, tried again, released; and how things stand. */
final class DispatchRoutes {
    private static final String JSON = "application/json";
    private static final int CREATED = 201;

    private final Doors.Traffic traffic;

    DispatchRoutes(Doors.Traffic traffic) {
        this.traffic = traffic;
    }

    void register(RoutesConfig routes) {
        routes.get("/v1/dispatch", this::list);
        routes.post("/v1/records/{uid}/dispatch", this::queue);
        routes.get("/v1/dispatch/{id}", ctx -> answer(ctx, desk().get(id(ctx))));
        routes.post("/v1/dispatch/{id}/retry", ctx -> answer(ctx, desk().retry(id(ctx))));
        routes.post("/v1/dispatch/{id}/release", ctx -> answer(ctx, desk().release(id(ctx))));
        routes.get(
                "/v1/status",
                ctx -> ctx.contentType(JSON)
                        .result(traffic.status().get().json().toString()));
    }

    private DispatchDesk desk() {
        return traffic.desk();
    }

    private void list(Context ctx) {
        Page page = Page.of(ctx);
        Optional<State> state = Optional.ofNullable(ctx.queryParam("state")).map(DispatchRoutes::state);
        List<Dispatch> found = Optional.ofNullable(ctx.queryParam("caseId"))
                .map(caseId -> desk().ofCase(caseId).stream()
                        .filter(each -> state.isEmpty() || state.get() == each.state())
                        .skip(page.offset())
                        .limit(page.limit())
                        .toList())
                .orElseGet(() -> desk().list(state, page.limit(), page.offset()));
        ctx.contentType(JSON).result(DispatchJson.list(desk(), found).toString());
    }

    private void queue(Context ctx) {
        List<Dispatch> queued = desk().queue(ctx.pathParam("uid"));
        ctx.status(CREATED)
                .contentType(JSON)
                .result(DispatchJson.list(desk(), queued).toString());
    }

    private void answer(Context ctx, Dispatch dispatch) {
        ctx.contentType(JSON).result(DispatchJson.whole(desk(), dispatch).toString());
    }

    private static State state(String word) {
        return Arrays.stream(State.values())
                .filter(state -> state.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new Refusal(new Problem.InvalidValue(
                        "",
                        "The query parameter state is none of the states.",
                        "Give one of "
                                + Arrays.stream(State.values()).map(State::word).collect(Collectors.joining(", "))
                                + ".")));
    }

    private static long id(Context ctx) {
        String text = ctx.pathParam("id");
        if (!text.matches("\\d{1,18}")) {
            throw new Refusal(new Problem.NotHeld(
                    "", "There is no dispatch with this number.", "List them with GET /v1/dispatch."));
        }
        return Long.parseLong(text);
    }
}
