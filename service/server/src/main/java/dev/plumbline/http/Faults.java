// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.http.Problems.Row;
import dev.plumbline.problem.Refusal;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import org.eclipse.jetty.io.EofException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Everything thrown on the way becomes an answer here, and only here. */
final class Faults {
    private static final Logger LOG = LoggerFactory.getLogger(Faults.class);
    private static final int NOT_FOUND = 404;
    private static final int METHOD_NOT_ALLOWED = 405;
    private static final int REQUEST_TIMEOUT = 408;

    private final Supplier<String> incidents;

    /** @param incidents gives a new number for each fault of ours */
    Faults(Supplier<String> incidents) {
        this.incidents = incidents;
    }

    void register(RoutesConfig routes) {
        routes.exception(Refusal.class, (refusal, ctx) -> ProblemJson.answer(ctx, refusal.problem()));
        routes.exception(HttpResponseException.class, Faults::answer);
        routes.exception(Exception.class, this::answer);
    }

    private void answer(Exception fault, Context ctx) {
        if (isSenders(fault)) {
            LOG.debug("A request ended in its middle.", fault);
            ProblemJson.answer(
                    ctx,
                    new Row(REQUEST_TIMEOUT, Problems.BAD_REQUEST.slug(), Problems.BAD_REQUEST.title()),
                    "The request ended, or came too slowly, before its body was there.",
                    "Send it again.");
            return;
        }
        String incident = incidents.get();
        LOG.error("Incident {}", incident, fault);
        ProblemJson.answerOurFault(ctx, incident);
    }

    /** Whether the sender is to blame, who left or was too slow while the body was read; not a disk that cannot be read. */
    private static boolean isSenders(Exception fault) {
        for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
            if (cause instanceof TooSlow || cause instanceof TimeoutException || cause instanceof EofException) {
                return true;
            }
        }
        return false;
    }

    /** What the server itself refuses before a route is reached. */
    private static void answer(HttpResponseException refused, Context ctx) {
        switch (refused.getStatus()) {
            case NOT_FOUND ->
                ProblemJson.answer(
                        ctx, Problems.UNKNOWN_ROUTE, "No route has this address.", "See GET /v1/openapi.json.");
            case METHOD_NOT_ALLOWED -> {
                // RFC 9110, 15.5.6: such an answer must say which methods there are.
                ctx.header("Allow", refused.getDetails().getOrDefault("availableMethods", ""));
                ProblemJson.answer(
                        ctx,
                        Problems.METHOD_NOT_ALLOWED,
                        "The address does not take this method.",
                        "See GET /v1/openapi.json.");
            }
            default ->
                ProblemJson.answer(
                        ctx,
                        new Row(refused.getStatus(), Problems.BAD_REQUEST.slug(), Problems.BAD_REQUEST.title()),
                        "The server refused the request before a route was reached.",
                        "See GET /v1/openapi.json.");
        }
    }
}
