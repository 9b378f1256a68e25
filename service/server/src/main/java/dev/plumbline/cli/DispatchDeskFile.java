// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.Inspection;
import dev.plumbline.archive.LowWater;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.config.CertificateEnd;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.dispatch.DispatchDesk;
import dev.plumbline.dispatch.SitePeers;
import dev.plumbline.dispatch.StatusReport;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;

/** The desk of a service that is not running, straight from its folder. */
final class DispatchDeskFile implements AutoCloseable {
    private final Path data;
    private final DataFolder folder;
    private final SqliteStore store;
    private final DispatchDesk desk;
    private final List<String> warnings;

    DispatchDeskFile(Path data, ServiceConfig config, Clock clock) throws IOException {
        this.data = data;
        this.folder = DataFolder.open(data);
        this.store = store(folder);
        Archive archive = new Archive(folder, store, LowWater.USUAL);
        this.warnings = CertificateEnd.of(config.network()).stream()
                .flatMap(end -> end.warning(clock.instant()).stream())
                .toList();
        this.desk = DispatchDesk.closed(store, new SitePeers(config.network(), clock).destinations(archive), clock);
    }

    private static SqliteStore store(DataFolder folder) throws IOException {
        try {
            return SqliteStore.open(folder.databaseInUse());
        } catch (IOException | RuntimeException e) {
            folder.close();
            throw e;
        }
    }

    DispatchDesk desk() {
        return desk;
    }

    StatusReport report() throws IOException {
        return new StatusReport(desk, LowWater.free(data), new Inspection(folder, store).quick(), warnings);
    }

    @Override
    public void close() throws IOException {
        store.close();
        folder.close();
    }
}
