// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.Cases;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.LowWater;
import dev.plumbline.archive.Records;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.dicom.Installation;
import dev.plumbline.dicom.RecordComposer;
import dev.plumbline.document.AnswerJson;
import dev.plumbline.http.Doors;
import dev.plumbline.needle.NeedleCatalogue;
import dev.plumbline.record.Companions;
import dev.plumbline.record.SiteRules;
import java.io.IOException;
import java.math.BigInteger;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;

/** The running service: data folder, store, archive, records and the doors, opened in this order and closed in reverse. */
final class Service implements AutoCloseable {
    private final DataFolder folder;
    private final SqliteStore store;
    private final Doors doors;
    private final AtomicBoolean open = new AtomicBoolean(true);

    /**
     * What a site states about its installation.
     *
     * @param data folder that holds everything
     * @param institution printed in records
     * @param country of the records' language, ISO 3166-1 alpha-2
     * @param uses what the site has in place of what ships
     */
    record Settings(Path data, Doors.Address address, String institution, String country, Uses uses) {}

    /**
     * What a site may have of its own.
     *
     * @param bedside what it has set for the bedside
     * @param needles that needles are chosen from
     * @param companions made beside every report
     */
    record Uses(SiteRules bedside, NeedleCatalogue needles, Companions companions) {}

    private Service(DataFolder folder, SqliteStore store, Settings settings) {
        this.folder = folder;
        this.store = store;
        Archive archive = new Archive(folder, store, LowWater.USUAL);
        Uses uses = settings.uses();
        Clock clock = Clock.system(ZoneId.systemDefault());
        Cases cases = new Cases(archive, uses.bedside(), clock);
        RecordComposer composer = new RecordComposer(installation(store, settings), uses.companions());
        Records records = new Records(archive, composer, cases, clock);
        this.doors = Doors.start(
                settings.address(),
                new Doors.Rooms(archive, cases, records, new AnswerJson(uses.needles())),
                new Doors.Service(
                        Version.text(), open::get, () -> UUID.randomUUID().toString()));
    }

    /**
     * Opens the folder and starts to answer.
     *
     * @throws dev.plumbline.problem.Refusal when another process uses the folder
     */
    static Service start(Settings settings) throws IOException {
        DataFolder folder = DataFolder.open(settings.data());
        try {
            return new Service(folder, SqliteStore.open(settings.data().resolve("store.sqlite")), settings);
        } catch (RuntimeException e) {
            folder.close();
            throw e;
        }
    }

    private static Installation installation(SqliteStore store, Settings settings) {
        String uid = store.deviceObserverUid(() -> randomUid(UUID.randomUUID()));
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

    @Override
    public void close() throws IOException {
        open.set(false);
        doors.close();
        store.close();
        folder.close();
    }
}
