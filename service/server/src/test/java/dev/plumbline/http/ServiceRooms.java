// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.Cases;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.Findings;
import dev.plumbline.archive.LowWater;
import dev.plumbline.archive.Records;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.archive.StudyMarks;
import dev.plumbline.config.BedsideFiles;
import dev.plumbline.config.NeedleFile;
import dev.plumbline.config.TransducerFile;
import dev.plumbline.dicom.Installation;
import dev.plumbline.dicom.RecordComposer;
import dev.plumbline.dispatch.DispatchDesk;
import dev.plumbline.dispatch.StatusReport;
import dev.plumbline.procedure.SightDetail;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

/** An archive and its records in a folder of their own, empty at first. */
final class ServiceRooms implements AutoCloseable {
    static final Clock CLOCK = Clock.fixed(Instant.parse("2026-01-05T09:30:00Z"), ZoneOffset.ofHours(1));
    private static final Installation INSTALLATION = new Installation(
            "2.25.329800735698586629295641978511506172918",
            "plumbline-test",
            "Plumbline",
            "0001",
            "0.0-test",
            "Sample Hospital",
            "GB",
            SightDetail.SUMMARY);

    final Path data;
    private final DataFolder folder;
    private final SqliteStore store;
    private final Archive archive;

    private ServiceRooms(Path data) throws IOException {
        this.data = data;
        folder = DataFolder.open(data);
        store = SqliteStore.open(data.resolve("store.sqlite"));
        archive = new Archive(folder, store, new LowWater(0, 0));
    }

    static ServiceRooms empty() throws IOException {
        return new ServiceRooms(Files.createTempDirectory("rooms"));
    }

    Doors.Rooms rooms() {
        Cases cases = new Cases(archive, BedsideFiles.shipped(), CLOCK);
        DispatchDesk desk = DispatchDesk.closed(store, List.of(), CLOCK);
        Records records = new Records(archive, new RecordComposer(INSTALLATION), cases, CLOCK);
        StudyMarks marks = new StudyMarks(archive, cases, records);
        archive.tell(marks::arrived);
        return new Doors.Rooms(
                archive,
                cases,
                records,
                new Doors.Catalogues(NeedleFile.shipped(), TransducerFile.shipped()),
                new Doors.Traffic(
                        desk, () -> new StatusReport(desk, 1L << 30, Findings.NONE, List.of()), Optional.empty()),
                marks);
    }

    /** Whether any object, case or record is held. */
    boolean holdsNothing() {
        return store.objects().isEmpty() && store.revisions(1, 0).isEmpty();
    }

    /** From now on every look into the store fails, as with a lost disk. */
    void breakStore() {
        store.close();
    }

    @Override
    public void close() throws IOException {
        store.close();
        folder.close();
    }
}
