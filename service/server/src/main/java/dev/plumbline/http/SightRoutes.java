// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.document.SightJson;
import dev.plumbline.document.StrictJson;
import dev.plumbline.sight.SightSearch;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;

/** The next single action for a needle that is not seen; nothing is kept. */
final class SightRoutes {
    private final SightSearch search;

    SightRoutes(SightSearch search) {
        this.search = search;
    }

    void register(RoutesConfig routes) {
        routes.post("/v1/sight/next", this::next);
    }

    private void next(Context ctx) {
        ctx.contentType("application/json")
                .result(SightJson.of(search.next(SightJson.question(StrictJson.read(Bodies.json(ctx)))))
                        .toString());
    }
}
