// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.Cases;
import dev.plumbline.archive.CompanionMaker;
import dev.plumbline.archive.Damage;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.Findings;
import dev.plumbline.archive.Inspection;
import dev.plumbline.archive.Intake;
import dev.plumbline.archive.LowWater;
import dev.plumbline.archive.Outbound;
import dev.plumbline.archive.Quotas;
import dev.plumbline.archive.RecordIndex;
import dev.plumbline.archive.Records;
import dev.plumbline.archive.Sender;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.archive.Store;
import dev.plumbline.archive.StoreDamaged;
import dev.plumbline.archive.StudyMarks;
import dev.plumbline.config.IntakeLimits;
import dev.plumbline.config.Network;
import dev.plumbline.config.SitePeer;
import dev.plumbline.dicom.Installation;
import dev.plumbline.dicom.RecordComposer;
import dev.plumbline.http.Doors;
import dev.plumbline.record.Companions;
import dev.plumbline.record.SiteRules;
import java.io.IOException;
import java.math.BigInteger;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The running service: data folder, store, archive, records and the doors, opened in this order and closed in reverse. */
final class Service implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Service.class);

    private final DataFolder folder;
    private final SqliteStore store;
    private final Traffic traffic;
    private final CompanionMaker companions;
    private final Doors doors;
    private final AtomicBoolean open = new AtomicBoolean(true);
    private volatile Runnable queued = () -> {};

    /**
     * What a site states about its installation.
     *
     * @param data folder that holds everything
     * @param institution printed in records
     * @param country of the records' language, ISO 3166-1 alpha-2
     * @param uses what the site has in place of what ships
     * @param network whom it speaks with by DICOM
     */
    record Settings(Path data, Doors.Address address, String institution, String country, Uses uses, Network network) {}

    /**
     * What a site may have of its own.
     *
     * @param bedside what it has set for the bedside
     * @param catalogues equipment to choose from
     * @param companions made beside every report
     * @param intake how much it lets in
     */
    record Uses(SiteRules bedside, Doors.Catalogues catalogues, Companions companions, IntakeLimits intake) {}

    private Service(DataFolder folder, SqliteStore store, Settings settings, LowWater lowWater) throws IOException {
        this.folder = folder;
        this.store = store;
        Findings found = new Inspection(folder, store).quick();
        List<Damage> damages = found.damages();
        damages.forEach(damage -> LOG.error("Damaged: {}", damage));
        Uses uses = settings.uses();
        Clock clock = Clock.system(ZoneId.systemDefault());
        Archive archive = new Archive(folder, store, intake(settings, lowWater, clock), outbound(settings.network()));
        Cases cases = new Cases(archive, uses.bedside(), clock);
        Records records = new Records(archive, composer(folder, store, settings), cases, clock);
        StudyMarks marks = new StudyMarks(archive, cases, records);
        archive.tell(marks::arrived);
        new RecordIndex(archive).complete().damages().forEach(damage -> LOG.error("Not listed: {}", damage));
        this.traffic = Traffic.start(
                settings.network(),
                new Traffic.Ground(settings.data(), archive, clock, () -> randomUid(UUID.randomUUID())),
                found);
        queued = traffic::wake;
        this.companions = records.companions();
        companions.start(System::nanoTime);
        try {
            this.doors = Doors.start(
                    settings.address(),
                    new Doors.Rooms(archive, cases, records, uses.catalogues(), traffic.shown(), marks),
                    about(() -> open.get() && damages.isEmpty() && archive.hasRoom()));
        } catch (RuntimeException e) {
            companions.close();
            traffic.close();
            throw e;
        }
    }

    private static Intake intake(Settings settings, LowWater lowWater, Clock clock) {
        IntakeLimits limits = settings.uses().intake();
        Map<Sender, Long> daily = new HashMap<>();
        limits.httpDailyBytes().ifPresent(bytes -> daily.put(Sender.HTTP, bytes));
        for (SitePeer peer : settings.network().peers()) {
            peer.dicom()
                    .ifPresent(dicom -> dicom.from()
                            .dailyBytes()
                            .ifPresent(bytes -> daily.merge(Sender.peer(dicom.aeTitle()), bytes, Math::min)));
        }
        return new Intake(lowWater, limits.objectBytes().orElse(Intake.MOST_BYTES), new Quotas(daily, clock));
    }

    private static RecordComposer composer(DataFolder folder, Store store, Settings settings) throws IOException {
        return new RecordComposer(
                installation(folder, store, settings), settings.uses().companions());
    }

    /**
     * Work on the records of a folder that no service uses; what it makes is queued for when one runs again.
     *
     * @throws dev.plumbline.problem.Refusal when another process uses the folder
     */
    static <T> T inFolder(Settings settings, Clock clock, Function<Records, T> work) throws IOException {
        try (DataFolder folder = DataFolder.open(settings.data());
                SqliteStore store = SqliteStore.open(folder.databaseInUse())) {
            Outbound outbound = new Outbound(destinations(settings.network()), () -> {});
            Archive archive = new Archive(folder, store, LowWater.USUAL, outbound);
            Cases cases = new Cases(archive, settings.uses().bedside(), clock);
            return work.apply(new Records(archive, composer(folder, store, settings), cases, clock));
        }
    }

    private Outbound outbound(Network network) {
        return new Outbound(destinations(network), () -> queued.run());
    }

    private static List<String> destinations(Network network) {
        return network.peers(SitePeer.Use.ARCHIVE).stream().map(SitePeer::name).toList();
    }

    private static Doors.Service about(BooleanSupplier ready) {
        return new Doors.Service(Version.text(), ready, () -> UUID.randomUUID().toString());
    }

    /**
     * Opens the folder and starts to answer.
     *
     * @throws dev.plumbline.problem.Refusal when another process uses the folder, or the configuration cannot hold
     * @throws dev.plumbline.archive.StoreDamaged when the store cannot be used; {@link #degraded} can still say so
     */
    static Service start(Settings settings) throws IOException {
        return start(settings, LowWater.USUAL);
    }

    /** As {@link #start(Settings)}, with so much of the disk to be left free. */
    static Service start(Settings settings, LowWater lowWater) throws IOException {
        DataFolder folder = DataFolder.open(settings.data());
        try {
            SqliteStore store = SqliteStore.open(folder.databaseInUse());
            try {
                return new Service(folder, store, settings, lowWater);
            } catch (IOException | RuntimeException e) {
                store.close();
                throw e;
            }
        } catch (IOException | RuntimeException e) {
            folder.close();
            throw e;
        }
    }

    /** A door that says what is damaged and does nothing else, so that nothing becomes worse. */
    static Doors degraded(Settings settings, StoreDamaged damage) {
        Damage named = new Damage(settings.data().resolve("store.sqlite"), String.valueOf(damage.getMessage()));
        return Doors.degraded(settings.address(), about(() -> false), List.of(named));
    }

    private static Installation installation(DataFolder folder, Store store, Settings settings) throws IOException {
        String uid = folder.observerUid(store, () -> randomUid(UUID.randomUUID()));
        String serial = uid.substring(uid.length() - 12);
        return new Installation(
                uid,
                "Plumbline",
                "Plumbline",
                serial,
                Version.text(),
                settings.institution(),
                settings.country(),
                settings.uses().bedside().signing().sightDetail());
    }

    /** Source: DICOM PS3.5 B.2. */
    private static String randomUid(UUID uuid) {
        byte[] bytes = ByteBuffer.allocate(2 * Long.BYTES)
                .putLong(uuid.getMostSignificantBits())
                .putLong(uuid.getLeastSignificantBits())
                .array();
        return "2.25." + new BigInteger(1, bytes);
    }

    int port() {
        return doors.port();
    }

    /** Where associations are accepted, if they are. */
    OptionalInt dicomPort() {
        return traffic.port();
    }

    @Override
    public void close() throws IOException {
        open.set(false);
        doors.close();
        companions.close();
        traffic.close();
        store.close();
        folder.close();
    }
}
