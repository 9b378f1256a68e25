// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.Findings;
import dev.plumbline.archive.LowWater;
import dev.plumbline.config.CertificateEnd;
import dev.plumbline.config.Network;
import dev.plumbline.config.SitePeer;
import dev.plumbline.dimse.Callers;
import dev.plumbline.dimse.Listener;
import dev.plumbline.dispatch.Destination;
import dev.plumbline.dispatch.DispatchDesk;
import dev.plumbline.dispatch.Dispatcher;
import dev.plumbline.dispatch.Inbox;
import dev.plumbline.dispatch.SitePeers;
import dev.plumbline.dispatch.StatusReport;
import dev.plumbline.http.Doors;
import dev.plumbline.worklist.Worklist;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ThreadLocalRandom;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What goes on with other systems: the door for associations, the couriers, the desk where people look at them. */
final class Traffic implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Traffic.class);

    private final Dispatcher dispatcher;
    private final Optional<Listener> listener;
    private final Doors.Traffic shown;

    /** What it stands on. */
    record Ground(Path data, Archive archive, Clock clock, Supplier<String> uids) {}

    private Traffic(Dispatcher dispatcher, Optional<Listener> listener, Doors.Traffic shown) {
        this.dispatcher = dispatcher;
        this.listener = listener;
        this.shown = shown;
    }

    /**
     * Starts to carry and to listen.
     *
     * @throws dev.plumbline.problem.Refusal where the configuration cannot hold
     */
    static Traffic start(Network network, Ground ground, Findings found) {
        SitePeers peers = new SitePeers(network, ground.clock());
        warnings(network, peers, ground).forEach(LOG::warn);
        List<Destination> destinations = peers.destinations(ground.archive());
        Callers callers = peers.callers();
        Optional<Listener> listener = network.door().map(door -> listener(network, peers, callers, ground));
        Dispatcher dispatcher = Dispatcher.start(
                ground.archive(),
                destinations,
                new Dispatcher.Given(
                        ground.clock(),
                        System::nanoTime,
                        () -> ThreadLocalRandom.current().nextDouble(),
                        ground.uids()));
        DispatchDesk desk = DispatchDesk.of(ground.archive().store(), destinations, ground.clock(), dispatcher);
        Doors.Traffic shown = new Doors.Traffic(
                desk,
                () -> new StatusReport(desk, freeBytes(ground.data()), found, warnings(network, peers, ground)),
                worklist(network, peers, ground.clock()));
        return new Traffic(dispatcher, listener, shown);
    }

    private static Listener listener(Network network, SitePeers peers, Callers callers, Ground ground) {
        Network.Door door = network.door().orElseThrow();
        return Listener.start(
                new Listener.Settings(
                        network.aeTitle(),
                        new InetSocketAddress(door.host(), door.port()),
                        door.tls().map(files -> peers.tls("the DICOM door", files)),
                        callers,
                        new Listener.Limits(door.associations(), door.perPeer()),
                        peers.timeouts()),
                new Inbox(ground.archive(), ground.clock()));
    }

    private static Optional<Worklist> worklist(Network network, SitePeers peers, Clock clock) {
        return network.peers(SitePeer.Use.WORKLIST).stream()
                .findFirst()
                .map(site -> new Worklist(
                        site.name(), peers.requestor(), peers.peer(site).orElseThrow(), clock));
    }

    private static List<String> warnings(Network network, SitePeers peers, Ground ground) {
        Stream<String> ends = CertificateEnd.of(network).stream()
                .flatMap(end -> end.warning(ground.clock().instant()).stream());
        return Stream.of(ends, peers.brokenTls().stream(), ground.archive().intakeWarnings().stream())
                .flatMap(warnings -> warnings)
                .toList();
    }

    private static long freeBytes(Path data) {
        try {
            return LowWater.free(data);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Doors.Traffic shown() {
        return shown;
    }

    void wake() {
        dispatcher.wake();
    }

    /** Where associations are accepted, if they are. */
    OptionalInt port() {
        return listener.map(each -> OptionalInt.of(each.port())).orElse(OptionalInt.empty());
    }

    @Override
    public void close() {
        listener.ifPresent(Listener::close);
        dispatcher.close();
    }
}
