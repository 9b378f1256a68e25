// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.Inspection;
import dev.plumbline.archive.LowWater;
import dev.plumbline.archive.RecordIndex;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.archive.StoreDamaged;
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
            RecordIndex.Rebuilt records = new RecordIndex(new Archive(folder, store, new LowWater(0, 0))).rebuild();
            reindexed.damages().forEach(damage -> terminal.line(damage.toString()));
            records.damages().forEach(damage -> terminal.line(damage.toString()));
            terminal.line(reindexed.added() + " objects were added to the index, which now has "
                    + store.objects().size() + ".");
            terminal.line(records.added() + " records and withdrawals were read from their files.");
            return reindexed.damages().isEmpty() && records.damages().isEmpty() ? ExitCode.YES : ExitCode.NO;
        }
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
