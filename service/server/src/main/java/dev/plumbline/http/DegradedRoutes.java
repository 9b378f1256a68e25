// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.Damage;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Set;

/** What a service answers whose store is damaged: the damage, and nothing that could make it worse. */
final class DegradedRoutes {
    private static final Set<String> ANSWERED =
            Set.of("/", "/health/live", "/health/ready", "/v1/openapi.json", "/v1/status");

    private final List<Damage> damages;

    DegradedRoutes(List<Damage> damages) {
        this.damages = List.copyOf(damages);
    }

    void register(RoutesConfig routes) {
        routes.before(this::requireAnswered);
        routes.get("/v1/status", this::status);
    }

    private void requireAnswered(Context ctx) {
        if (!ANSWERED.contains(ctx.path())) {
            throw new Refusal(new Problem.Unavailable(
                    "",
                    "The store of this service is damaged; it keeps and hands out nothing until that is mended.",
                    "See GET /v1/status, which names the file and what to do."));
        }
    }

    private void status(Context ctx) {
        ObjectNode answer = JsonNodeFactory.instance.objectNode().put("state", "degraded");
        ArrayNode list = answer.putArray("damages");
        damages.forEach(damage -> list.add(damage.toString()));
        answer.put("text", "The service is degraded: " + damages.get(0));
        ctx.contentType("application/json").result(answer.toString());
    }
}
