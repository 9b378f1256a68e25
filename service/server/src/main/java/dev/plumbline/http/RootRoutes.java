// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.document.AnswerJson;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/** What the service says about itself: name and cautions, health, the description of its routes. */
final class RootRoutes {
    private static final String JSON = "application/json";
    private static final String HTML = "text/html";
    private static final int UNAVAILABLE = 503;
    private static final int OK = 200;
    private static final byte[] OPENAPI = read("openapi.json");

    private final String version;
    private final BooleanSupplier ready;

    RootRoutes(String version, BooleanSupplier ready) {
        this.version = version;
        this.ready = ready;
    }

    void register(RoutesConfig routes) {
        routes.get("/", this::root);
        routes.get("/health/live", ctx -> status(ctx, OK, "live"));
        routes.get("/health/ready", this::ready);
        routes.get("/v1/openapi.json", ctx -> ctx.contentType(JSON).result(OPENAPI));
    }

    /** A browser that asks for a page is led to the first one, relatively, so that it holds behind a proxy. */
    private void root(Context ctx) {
        ctx.header("Vary", "Accept");
        if (Accepted.of(ctx).single(JSON, HTML).equals(Optional.of(HTML))) {
            ctx.redirect("pages/list", HttpStatus.SEE_OTHER);
        } else {
            about(ctx);
        }
    }

    private void about(Context ctx) {
        ObjectNode root =
                JsonNodeFactory.instance.objectNode().put("name", "Plumbline").put("version", version);
        root.putObject("links")
                .put("description", "/v1/openapi.json")
                .put("pages", "/pages/list")
                .put("plans", "/v1/plans")
                .put("comparisons", "/v1/comparisons")
                .put("frames", "/v1/frames")
                .put("records", "/v1/records")
                .put("worklist", "/v1/worklist")
                .put("dispatch", "/v1/dispatch")
                .put("status", "/v1/status")
                .put("dicomweb", "/dicomweb/studies")
                .put("health", "/health/ready");
        root.set("cautions", AnswerJson.cautions());
        ctx.contentType(JSON).result(root.toString());
    }

    private void ready(Context ctx) {
        boolean yes = ready.getAsBoolean();
        status(ctx, yes ? OK : UNAVAILABLE, yes ? "ready" : "notReady");
    }

    private static void status(Context ctx, int status, String word) {
        ObjectNode body = JsonNodeFactory.instance.objectNode().put("status", word);
        ctx.status(status).contentType(JSON).result(body.toString());
    }

    private static byte[] read(String resource) {
        try (InputStream in = RootRoutes.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException(resource + " is missing from the build.");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
