// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import org.eclipse.jetty.server.HttpConfiguration;

/** How the server behaves before any route is reached. The bounds are design choices. */
final class ServerSettings {
    private static final int HEADER_BYTES = 16 * 1024;
    private static final long IDLE_MILLISECONDS = 30_000;

    private ServerSettings() {}

    static void apply(JavalinConfig config, Doors.Address address) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.jetty.host = address.host();
        config.jetty.port = address.port();
        config.http.prefer405over404 = true;
        config.router.ignoreTrailingSlashes = false;
        config.jetty.modifyHttpConfiguration(ServerSettings::apply);
        config.jetty.modifyServer(server -> server.setErrorHandler(new ServerErrors()));
        config.routes.before(ServerSettings::headers);
        config.routes.before(SameSite::require);
    }

    private static void apply(HttpConfiguration http) {
        http.setSendServerVersion(false);
        http.setSendXPoweredBy(false);
        http.setRequestHeaderSize(HEADER_BYTES);
        http.setIdleTimeout(IDLE_MILLISECONDS);
    }

    /** Answers are about patients: not to be kept on the way, nor to be taken for something they are not. */
    private static void headers(Context ctx) {
        ctx.header("X-Content-Type-Options", "nosniff");
        ctx.header("Cache-Control", "no-store");
    }
}
