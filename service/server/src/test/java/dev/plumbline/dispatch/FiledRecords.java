// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.Filing;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.archive.LowWater;
import dev.plumbline.archive.Outbound;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.archive.StoredCase;
import dev.plumbline.archive.StoredRevision;
import dev.plumbline.dispatch.Courier.Times;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;

/** An archive with signed records that are queued for one destination; time passes when the test says so. */
final class FiledRecords implements AutoCloseable {
    static final String TO = "pacs";
    static final Clock CLOCK = Clock.fixed(Instant.parse("2026-01-05T09:30:00Z"), ZoneOffset.ofHours(1));

    final Archive archive;
    final AtomicLong nanoTime = new AtomicLong();
    volatile Runnable queued = () -> {};
    private final AtomicInteger uids = new AtomicInteger();
    private final DataFolder folder;
    private final SqliteStore store;

    FiledRecords(Path data) throws IOException {
        this(data, List.of(TO));
    }

    FiledRecords(Path data, List<String> destinations) throws IOException {
        folder = DataFolder.open(data);
        store = SqliteStore.open(folder.database());
        archive = new Archive(folder, store, new LowWater(0, 0), new Outbound(destinations, () -> queued.run()));
    }

    /** A record of two objects in a study of its own; the second stands for the report. */
    void file(int study) {
        file(study, 1);
    }

    /** A record of a case that was opened long before it was signed. */
    void fileOldCase(int study, Duration before) {
        file(study, 1, CLOCK.instant().minus(before));
    }

    /** A revision of two objects of the one case of a study. */
    void file(int study, int revision) {
        file(study, revision, CLOCK.instant());
    }

    private void file(int study, int revision, Instant opened) {
        int series = 2 * revision - 1;
        String image = InventedObjects.instanceUid(study, series, 1);
        String report = InventedObjects.instanceUid(study, series + 1, 2);
        archive.file(new Filing(
                new StoredCase("case-" + study, "{}", opened),
                new StoredRevision(
                        "case-" + study,
                        revision,
                        OffsetDateTime.parse("2026-01-05T10:30:00+01:00"),
                        StoredRevision.State.SIGNED,
                        "{}",
                        report,
                        List.of(report, image)),
                List.of(InventedObjects.imageFile(study, series, 1), InventedObjects.imageFile(study, series + 1, 2)),
                Optional.empty(),
                CLOCK.instant()));
    }

    Times times() {
        return new Times(CLOCK, nanoTime::get, new Backoff(() -> 0.5), () -> "2.25.77" + uids.incrementAndGet());
    }

    /** The only dispatch. */
    Dispatch dispatch() {
        return dispatch(1);
    }

    Dispatch dispatch(long id) {
        return store.dispatches().get(id).orElseThrow();
    }

    /** How many stand in a state. */
    int count(State state) {
        return store.dispatches().waiting(TO, state).size();
    }

    SqliteStore store() {
        return store;
    }

    @Override
    public void close() throws IOException {
        store.close();
        folder.close();
    }
}
