// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.CaseList;
import dev.plumbline.archive.Cases;
import dev.plumbline.archive.Damage;
import dev.plumbline.archive.HeldFrames;
import dev.plumbline.archive.Records;
import dev.plumbline.archive.StudyMarks;
import dev.plumbline.dispatch.DispatchDesk;
import dev.plumbline.dispatch.StatusReport;
import dev.plumbline.document.AnswerJson;
import dev.plumbline.geometry.TransducerCatalogue;
import dev.plumbline.needle.NeedleCatalogue;
import dev.plumbline.sight.SightSearch;
import dev.plumbline.worklist.Worklist;
import io.javalin.Javalin;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
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

    /** What the routes lead to. */
    public record Rooms(
            Archive archive, Cases cases, Records records, Catalogues catalogues, Traffic traffic, StudyMarks marks) {
        AnswerJson answers() {
            return new AnswerJson(catalogues.needles());
        }
    }

    /** What equipment there is to choose from. */
    public record Catalogues(NeedleCatalogue needles, TransducerCatalogue transducers) {}

    /**
     * What goes on with other systems.
     *
     * @param worklist empty where none is configured
     */
    public record Traffic(DispatchDesk desk, Supplier<StatusReport> status, Optional<Worklist> worklist) {}

    /**
     * What the service knows of itself.
     *
     * @param incidents gives a new number for each fault of ours
     */
    public record Service(String version, BooleanSupplier ready, Supplier<String> incidents) {}

    /** Opens the door; what is asked is answered as soon as this returns. */
    public static Doors start(Address address, Rooms rooms, Service service) {
        return new Doors(Javalin.create(config -> {
                    ServerSettings.apply(config, address);
                    new Faults(service.incidents()).register(config.routes);
                    new RootRoutes(service.version(), service.ready()).register(config.routes);
                    new PlanRoutes(new HeldFrames(rooms.archive()), rooms.answers()).register(config.routes);
                    new FrameRoutes(rooms.archive()).register(config.routes);
                    new SightRoutes(
                                    new SightSearch(rooms.cases().site().sight()),
                                    rooms.cases(),
                                    new HeldFrames(rooms.archive()))
                            .register(config.routes);
                    new SiteListRoutes(rooms.catalogues(), rooms.cases().site()).register(config.routes);
                    new CaseRoutes(rooms.cases(), new CaseList(rooms.archive(), rooms.cases())).register(config.routes);
                    new MarkRoutes(rooms.archive(), rooms.marks()).register(config.routes);
                    new RecordRoutes(rooms.records(), rooms.answers()).register(config.routes);
                    new DispatchRoutes(rooms.traffic()).register(config.routes);
                    new WorklistRoutes(rooms.traffic().worklist()).register(config.routes);
                    new DicomWebRoutes(rooms.archive()).register(config);
                    new PageRoutes(rooms).register(config.routes);
                })
                .start());
    }

    /** A door that only says what is damaged: status and health are answered, everything else is refused. */
    public static Doors degraded(Address address, Service service, List<Damage> damages) {
        return new Doors(Javalin.create(config -> {
                    ServerSettings.apply(config, address);
                    new Faults(service.incidents()).register(config.routes);
                    new DegradedRoutes(damages).register(config.routes);
                    new RootRoutes(service.version(), service.ready()).register(config.routes);
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
