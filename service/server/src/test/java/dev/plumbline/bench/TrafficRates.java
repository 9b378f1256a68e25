// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.bench;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Filing;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.archive.LowWater;
import dev.plumbline.archive.Outbound;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.archive.StoredCase;
import dev.plumbline.archive.StoredRevision;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import dev.plumbline.dimse.AddressRange;
import dev.plumbline.dimse.Callers;
import dev.plumbline.dimse.Listener;
import dev.plumbline.dimse.Timeouts;
import dev.plumbline.dispatch.Dispatcher;
import dev.plumbline.dispatch.Inbox;
import dev.plumbline.dispatch.SitePeers;
import dev.plumbline.peer.PeerProcess;
import dev.plumbline.peer.QueryRetrievePeer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Objects on their way to an archive and from a modality, beside DCMTK's own programs with the same files in the same run:
 * dispatch to dcmqrscp beside dcmsend, receiving from dcmsend beside storescp, and what synced writing alone takes. Prints
 * tables; run by {@code ./plumbline bench}.
 */
public final class TrafficRates {
    private static final int RECORDS = 100;
    private static final int MEGABYTES = 500;
    private static final int SIDE = 1000;
    private static final int STUDIES = 20;
    private static final String TO = "pacs";

    private final Path folder;

    private TrafficRates(Path folder) {
        this.folder = folder;
    }

    /** Measures so many records and so many megabytes, or as the arguments say. */
    public static void main(String[] arguments) throws Exception {
        int records = arguments.length > 0 ? Integer.parseInt(arguments[0]) : RECORDS;
        int megabytes = arguments.length > 1 ? Integer.parseInt(arguments[1]) : MEGABYTES;
        Path folder = Files.createTempDirectory("plumbline-traffic-");
        try {
            new TrafficRates(folder).run(records, megabytes);
        } finally {
            delete(folder);
        }
    }

    private void run(int records, int megabytes) throws Exception {
        System.out.printf("%-60s%10s%10s%10s%n", "", "seconds", "MB/s", "ratio");
        List<Path> files = new ArrayList<>();
        double sent = dispatched("none", records, Dispatch.State.SENT, files);
        double other = dcmsend(files);
        double size = size(files);
        line(records + " records of 2 objects to dcmqrscp by dcmsend", other, size, 1);
        line("the same by dispatch, each state change synced", sent, size, other / sent);
        double proved = dispatched("get", records, Dispatch.State.PROVED, new ArrayList<>());
        line("the same, and read back by C-GET and compared", proved, size, other / proved);
        receiving(megabytes);
    }

    private static void line(String what, double seconds, double bytes, double ratio) {
        System.out.printf("%-60s%10.2f%10.1f%10.2f%n", what, seconds, bytes / 1e6 / seconds, ratio);
    }

    private static byte[] object(int study, int series, int instance) {
        byte[] samples = new byte[SIDE * SIDE];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (byte) (i * 31 + instance);
        }
        return DicomFile.encode(InventedObjects.image(study, series, instance)
                .put(Tag.ROWS, SIDE)
                .put(Tag.COLUMNS, SIDE)
                .put(Tag.PIXEL_DATA, samples));
    }

    /** Queues the records while nobody carries, then measures from the start of carrying to the last one's state. */
    private double dispatched(String proof, int records, Dispatch.State state, List<Path> files) throws Exception {
        Path here = Files.createDirectories(folder.resolve("dispatch-" + proof));
        try (QueryRetrievePeer peer = QueryRetrievePeer.start(here);
                DataFolder data = DataFolder.open(here.resolve("data"));
                SqliteStore store = SqliteStore.open(data.database())) {
            Archive archive = new Archive(data, store, new LowWater(0, 0), new Outbound(List.of(TO), () -> {}));
            for (int i = 1; i <= records; i++) {
                file(archive, i);
            }
            Path config = Files.writeString(
                    here.resolve("plumbline.json"),
                    "{\"schema\":\"plumbline-service/1\",\"peers\":[{\"name\":\"" + TO + "\",\"aeTitle\":\""
                            + QueryRetrievePeer.AE_TITLE + "\",\"host\":\"127.0.0.1\",\"port\":" + peer.port()
                            + ",\"uses\":[\"archive\"],\"proof\":\"" + proof + "\"}]}");
            SitePeers peers = new SitePeers(ServiceConfig.read(config).network(), Clock.systemDefaultZone());
            long began = System.nanoTime();
            Dispatcher.Given given =
                    new Dispatcher.Given(Clock.systemDefaultZone(), System::nanoTime, () -> 0.5, () -> "2.25.1");
            double seconds;
            try (Dispatcher dispatcher = Dispatcher.start(archive, peers.destinations(archive), given)) {
                dispatcher.wake();
                while (store.dispatches().waiting(TO, state).size() < records) {
                    Thread.sleep(20);
                }
                seconds = (System.nanoTime() - began) / 1e9;
            }
            store.objects().forEach(object -> files.add(archive.file(object)));
            return copied(files, here, seconds);
        }
    }

    /** dcmsend takes files by their names, and ours outlive the folder they lay in. */
    private static double copied(List<Path> files, Path here, double seconds) throws IOException {
        Path out = Files.createDirectories(here.resolve("files"));
        for (int i = 0; i < files.size(); i++) {
            files.set(i, Files.copy(files.get(i), out.resolve(i + ".dcm")));
        }
        return seconds;
    }

    private static void file(Archive archive, int record) {
        int study = 1 + record % STUDIES;
        String image = InventedObjects.instanceUid(study, record, 1);
        String report = InventedObjects.instanceUid(study, record, 2);
        archive.file(new Filing(
                new StoredCase("case-" + record, "{}", Clock.systemUTC().instant()),
                new StoredRevision(
                        "case-" + record,
                        1,
                        OffsetDateTime.parse("2026-01-05T10:30:00+01:00"),
                        StoredRevision.State.SIGNED,
                        "{}",
                        report,
                        List.of(report, image)),
                List.of(object(study, record, 1), object(study, record, 2)),
                Optional.empty(),
                Clock.systemUTC().instant()));
    }

    private double dcmsend(List<Path> files) throws Exception {
        Path here = Files.createDirectories(folder.resolve("dcmsend"));
        try (QueryRetrievePeer peer = QueryRetrievePeer.start(here)) {
            return send(files.get(0).getParent(), QueryRetrievePeer.AE_TITLE, peer.port());
        }
    }

    private double send(Path files, String aeTitle, int port) throws IOException {
        long began = System.nanoTime();
        PeerProcess.Ended ended = PeerProcess.run(
                folder,
                List.of(
                        "dcmsend",
                        "-aet",
                        "BENCH",
                        "-aec",
                        aeTitle,
                        "+sd",
                        "127.0.0.1",
                        Integer.toString(port),
                        files.toString()),
                Duration.ofHours(1));
        if (ended.code() != 0) {
            throw new IOException(ended.said());
        }
        return (System.nanoTime() - began) / 1e9;
    }

    private void receiving(int megabytes) throws Exception {
        Path files = Files.createDirectories(folder.resolve("modality"));
        for (int i = 1; i <= megabytes; i++) {
            Files.write(files.resolve(i + ".dcm"), object(1 + i % STUDIES, 1, i));
        }
        double size = size(list(files));
        double other = storescp(files);
        line(megabytes + " objects of 1 MB from dcmsend into storescp, not synced", other, size, 1);
        double ours = received(files, megabytes);
        line("the same into the service: gated, indexed, synced one by one", ours, size, other / ours);
        System.out.printf("%-60s%10.2f%n", "of that, syncing files and folders (the same writes alone)", synced(files));
    }

    private double storescp(Path files) throws Exception {
        Path out = Files.createDirectories(folder.resolve("storescp"));
        int port = PeerProcess.freePort();
        try (PeerProcess peer =
                PeerProcess.start(folder, port, List.of("storescp", "-od", out.toString(), Integer.toString(port)))) {
            return send(files, "STORESCP", peer.port());
        }
    }

    private double received(Path files, int objects) throws Exception {
        try (DataFolder data = DataFolder.open(folder.resolve("received"));
                SqliteStore store = SqliteStore.open(data.database())) {
            Archive archive = new Archive(data, store, new LowWater(0, 0));
            Listener.Settings settings = new Listener.Settings(
                    "PLUMBLINE",
                    new InetSocketAddress(InetAddress.getLoopbackAddress(), 0),
                    Optional.empty(),
                    new Callers(Map.of("BENCH", List.of(AddressRange.of("127.0.0.1")))),
                    Listener.Limits.USUAL,
                    Timeouts.USUAL);
            try (Listener listener = Listener.start(settings, new Inbox(archive, Clock.systemDefaultZone()))) {
                double seconds = send(files, "PLUMBLINE", listener.port());
                if (store.objects().size() != objects) {
                    throw new IllegalStateException(
                            "Received " + store.objects().size() + " of " + objects);
                }
                return seconds;
            }
        }
    }

    /** Seconds in fsync, of files and their folder, for the same bytes written one after the other. */
    private double synced(Path files) throws IOException {
        Path out = Files.createDirectories(folder.resolve("synced"));
        long nanos = 0;
        for (Path file : list(files)) {
            byte[] bytes = Files.readAllBytes(file);
            try (FileChannel channel = FileChannel.open(
                            out.resolve(file.getFileName()), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                    FileChannel directory = FileChannel.open(out, StandardOpenOption.READ)) {
                channel.write(ByteBuffer.wrap(bytes));
                long began = System.nanoTime();
                channel.force(true);
                directory.force(true);
                nanos += System.nanoTime() - began;
            }
        }
        return nanos / 1e9;
    }

    private static List<Path> list(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.toList();
        }
    }

    private static double size(List<Path> files) throws IOException {
        double bytes = 0;
        for (Path file : files) {
            bytes += Files.size(file);
        }
        return bytes;
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }
}
