// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.http.Problems.Row;
import dev.plumbline.problem.Problem;
import io.javalin.http.Context;

/** A refusal as {@code application/problem+json}. Source: RFC 9457, 3; {@code pointer} and {@code remedy} are ours. */
final class ProblemJson {
    static final String MEDIA_TYPE = "application/problem+json";

    private ProblemJson() {}

    static void answer(Context ctx, Problem problem) {
        answer(ctx, Problems.of(problem.getClass()), problem);
    }

    static void answer(Context ctx, Row row, Problem problem) {
        ObjectNode body = body(row, problem.detail(), problem.remedy()).put("pointer", problem.pointer());
        if (problem instanceof Problem.Incomplete incomplete) {
            ArrayNode missing = body.putArray("missing");
            incomplete
                    .missing()
                    .forEach(item -> missing.addObject()
                            .put("item", item.item())
                            .put("text", item.text())
                            .put("pointer", item.pointer()));
        }
        if (problem instanceof Problem.OrderMismatch mismatch) {
            ArrayNode differs = body.putArray("differs");
            mismatch.items().forEach(differs::add);
        }
        send(ctx, body);
    }

    static void answer(Context ctx, Row row, String detail, String remedy) {
        send(ctx, body(row, detail, remedy).put("pointer", ""));
    }

    /** Our own fault: nothing of it is told but the number under which it was logged. */
    static void answerOurFault(Context ctx, String incident) {
        ObjectNode body = body(
                Problems.OUR_FAULT,
                "This is no fault of the request. It was logged as incident " + incident + ".",
                "Try again; if it stays, give this number to whoever runs the service.");
        send(ctx, body.put("pointer", "").put("incident", incident));
    }

    static ObjectNode body(Row row, String detail, String remedy) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("type", row.type())
                .put("title", row.title())
                .put("status", row.status())
                .put("detail", detail)
                .put("remedy", remedy);
    }

    /** A route may have begun to say what its answer is made of; of that nothing is left. */
    private static void send(Context ctx, ObjectNode body) {
        ctx.res().setCharacterEncoding((String) null);
        ctx.status(body.path("status").intValue());
        Utf8.send(ctx, MEDIA_TYPE, body.toString());
    }
}
