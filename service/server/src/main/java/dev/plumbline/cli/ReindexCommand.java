// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.Inspection;
import dev.plumbline.archive.LowWater;
import dev.plumbline.archive.Outbound;
import dev.plumbline.archive.RecordIndex;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.archive.StoreDamaged;
import dev.plumbline.config.SitePeer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code reindex}. */
@Command(
        name = "reindex",
        mixinStandardHelpOptions = true,
        description =
                "Adds to the index every object file that it does not know, and the records they tell of. Exit 1 when a file cannot be used.")
final class ReindexCommand implements Callable<Integer> {
    private static final List<String> STORE_FILES = List.of("", "-wal", "-shm");

    private final Terminal terminal;
    private final Clock clock;
    private final Supplier<Path> usualFolder;

    @Option(
            names = "--set-damaged-store-aside",
            description = "Renames a store that cannot be opened and begins a new one; cases, drafts and the queue of"
                    + " records to be sent come back from a copy only.")
    private boolean setAside;

    @Option(
            names = "--send",
            description =
                    "Queues the records that were read from their files for every archive of the configuration, as"
                            + " nothing here tells which of them had arrived; an archive that has one gets the same bytes again.")
    private boolean send;

    @Mixin
    private SiteOption site = new SiteOption();

    ReindexCommand(Terminal terminal, Clock clock, Supplier<Path> usualFolder) {
        this.terminal = terminal;
        this.clock = clock;
        this.usualFolder = usualFolder;
    }

    @Override
    public Integer call() throws IOException {
        try (DataFolder folder = DataFolder.open(site.dataFolder(usualFolder));
                SqliteStore store = open(folder.database())) {
            Inspection.Reindexed reindexed = new Inspection(folder, store).reindex();
            Archive archive = new Archive(folder, store, new LowWater(0, 0), new Outbound(destinations(), () -> {}));
            RecordIndex.Rebuilt records = new RecordIndex(archive).rebuild(clock.instant());
            reindexed.damages().forEach(damage -> terminal.line(damage.toString()));
            records.damages().forEach(damage -> terminal.line(damage.toString()));
            terminal.line(
                    reindexed.added() + " objects were added to the index, which now has " + store.objectCount() + ".");
            terminal.line(records.added() + " records and withdrawals were read from their files.");
            if (records.added() > 0 && !send) {
                terminal.line(
                        "Which of them other archives have is not known here: none is queued. With --send all would"
                                + " have been; plumbline dispatch queue --record UID queues one.");
            }
            return reindexed.damages().isEmpty() && records.damages().isEmpty() ? ExitCode.YES : ExitCode.NO;
        }
    }

    private List<String> destinations() throws IOException {
        if (!send) {
            return List.of();
        }
        return site.read().network().peers(SitePeer.Use.ARCHIVE).stream()
                .map(SitePeer::name)
                .toList();
    }

    private SqliteStore open(Path database) throws IOException {
        try {
            return SqliteStore.open(database);
        } catch (StoreDamaged damage) {
            if (!setAside) {
                throw damage;
            }
            String suffix = ".damaged-" + clock.instant().getEpochSecond();
            for (String each : STORE_FILES) {
                Path file = database.resolveSibling(database.getFileName() + each);
                if (Files.exists(file)) {
                    Files.move(file, file.resolveSibling(file.getFileName() + suffix));
                    terminal.note("Set aside: " + file + suffix);
                }
            }
            return SqliteStore.open(database);
        }
    }
}
