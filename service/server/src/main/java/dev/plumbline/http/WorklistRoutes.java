// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.worklist.Worklist;
import dev.plumbline.worklist.WorklistJson;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;

/** Procedures that are scheduled on a day. */
final class WorklistRoutes {
    private final Optional<Worklist> worklist;

    WorklistRoutes(Optional<Worklist> worklist) {
        this.worklist = worklist;
    }

    void register(RoutesConfig routes) {
        routes.get("/v1/worklist", this::scheduled);
    }

    private void scheduled(Context ctx) {
        Optional<LocalDate> date = Optional.ofNullable(ctx.queryParam("date")).map(WorklistRoutes::date);
        ctx.contentType("application/json")
                .result(worklist.map(asked -> WorklistJson.of(asked.scheduled(date)))
                        .orElseGet(() -> WorklistJson.none(date))
                        .toString());
    }

    private static LocalDate date(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The query parameter date is no date.", "Give one such as 2026-01-05; today where absent."));
        }
    }
}
