// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.document.SiteListJson;
import dev.plumbline.geometry.TransducerCatalogue;
import dev.plumbline.needle.NeedleCatalogue;
import dev.plumbline.record.SiteRules;
import io.javalin.config.RoutesConfig;
import java.util.function.Supplier;

/** What the site has to choose from: needles, transducers, blocks, set-up checks. */
final class SiteListRoutes {
    private final Doors.Catalogues catalogues;
    private final SiteRules rules;

    SiteListRoutes(Doors.Catalogues catalogues, SiteRules rules) {
        this.catalogues = catalogues;
        this.rules = rules;
    }

    void register(RoutesConfig routes) {
        NeedleCatalogue needles = catalogues.needles();
        TransducerCatalogue transducers = catalogues.transducers();
        list(routes, "needles", () -> SiteListJson.needles(needles));
        list(routes, "transducers", () -> SiteListJson.transducers(transducers));
        list(routes, "blocks", () -> SiteListJson.blocks(rules.blocks()));
        list(routes, "checks", () -> SiteListJson.checks(rules.checks()));
    }

    private static void list(RoutesConfig routes, String name, Supplier<ObjectNode> list) {
        routes.get(
                "/v1/site/" + name,
                ctx -> ctx.contentType("application/json").result(list.get().toString()));
    }
}
