// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * The HTTP door, open from {@link #start} to {@link #close}. It has no access control of its own, so it listens on the
 * loopback interface unless told otherwise.
 */
public final class Doors implements AutoCloseable {
    private final Javalin javalin;

    private Doors(Javalin javalin) {
        this.javalin = javalin;
    }

    /**
     * Where to listen.
     *
     * @param port 0 for any free one
     */
    public record Address(String host, int port) {
        /** Not reachable from other machines. */
        public static Address loopback(int port) {
            return new Address("127.0.0.1", port);
        }
    }

    /**
     * What the routes lead to.
     *
     * @param more registers further routes beside ours
     */
    public record Desks(FrameDesk frames, RecordDesk records, List<Consumer<JavalinConfig>> more) {
        public Desks {
            more = List.copyOf(more);
        }
    }

    /**
     * What the service knows of itself.
     *
     * @param incidents gives a new number for each fault of ours
     */
    public record Service(String version, BooleanSupplier ready, Supplier<String> incidents) {}

    /** Opens the door; what is asked is answered as soon as this returns. */
    public static Doors start(Address address, Desks desks, Service service) {
        return new Doors(Javalin.create(config -> {
                    ServerSettings.apply(config, address);
                    new Faults(service.incidents()).register(config.routes);
                    new RootRoutes(service.version(), service.ready()).register(config.routes);
                    new PlanRoutes(desks.frames()).register(config.routes);
                    new FrameRoutes(desks.frames()).register(config.routes);
                    new RecordRoutes(desks.records()).register(config.routes);
                    desks.more().forEach(routes -> routes.accept(config));
                })
                .start());
    }

    public int port() {
        return javalin.port();
    }

    /** Method and path of every route, such as {@code GET /v1/records/{uid}}. */
    List<String> routes() {
        return javalin.unsafe.internalRouter.allHttpHandlers().stream()
                .map(route -> route.endpoint.method.name() + " " + route.endpoint.path)
                .toList();
    }

    @Override
    public void close() {
        javalin.stop();
    }
}
