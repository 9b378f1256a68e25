// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.component.LifeCycle;

/** How the server behaves before any route is reached. The bounds are design choices. */
final class ServerSettings {
    private static final int HEADER_BYTES = 16 * 1024;
    private static final long IDLE_MILLISECONDS = 30_000;

    /** More have to wait until one of them ends; meanwhile they are idle for a shorter time. */
    private static final int MOST_CONNECTIONS = 4_096;

    private static final long CROWDED_IDLE_MILLISECONDS = 1_000;

    /** So many may come at once; with the usual 50, whoever comes next waits for a second until its system tries again. */
    private static final int BACKLOG = 1_024;

    private ServerSettings() {}

    static void apply(JavalinConfig config, Doors.Address address) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.jetty.host = address.host();
        config.jetty.port = address.port();
        config.http.prefer405over404 = true;
        config.router.ignoreTrailingSlashes = false;
        config.jetty.modifyHttpConfiguration(ServerSettings::apply);
        config.jetty.modifyServer(ServerSettings::apply);
        config.routes.before(ServerSettings::headers);
        config.routes.before(SameSite::require);
    }

    private static void apply(HttpConfiguration http) {
        http.setSendServerVersion(false);
        http.setSendXPoweredBy(false);
        http.setRequestHeaderSize(HEADER_BYTES);
        http.setIdleTimeout(IDLE_MILLISECONDS);
    }

    private static void apply(Server server) {
        server.setErrorHandler(new ServerErrors());
        NetworkConnectionLimit connections = new NetworkConnectionLimit(MOST_CONNECTIONS, server);
        connections.setEndPointIdleTimeout(CROWDED_IDLE_MILLISECONDS);
        server.addBean(connections);
        server.addEventListener(new LifeCycle.Listener() {
            @Override
            public void lifeCycleStarting(LifeCycle starting) {
                for (Connector each : server.getConnectors()) {
                    ((ServerConnector) each).setAcceptQueueSize(BACKLOG);
                }
            }
        });
        SlowSenders slow = new SlowSenders();
        slow.setHandler(new NoUpgrade(LargeBodies.behindSmallOnes()));
        server.setHandler(slow);
    }

    /** Answers are about patients: not to be kept on the way, nor to be taken for something they are not. */
    private static void headers(Context ctx) {
        ctx.header("X-Content-Type-Options", "nosniff");
        ctx.header("Cache-Control", "no-store");
    }
}
