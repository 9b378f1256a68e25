// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.archive.Damage;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.Inspection;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.archive.StoreDamaged;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code doctor}. */
@Command(
        name = "doctor",
        mixinStandardHelpOptions = true,
        description = "Reads every file of the data folder and names what is damaged. Exit 1 when something is.")
final class DoctorCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Supplier<Path> usualFolder;

    @Mixin
    private SiteOption site = new SiteOption();

    DoctorCommand(Terminal terminal, Supplier<Path> usualFolder) {
        this.terminal = terminal;
        this.usualFolder = usualFolder;
    }

    @Override
    public Integer call() throws IOException {
        try (DataFolder folder = DataFolder.open(site.dataFolder(usualFolder));
                SqliteStore store = SqliteStore.open(folder.databaseInUse())) {
            Inspection inspection = new Inspection(folder, store);
            List<Damage> damages = inspection.altered();
            damages.forEach(damage -> terminal.line(damage.toString()));
            int objects = store.objectCount();
            terminal.line(
                    damages.isEmpty()
                            ? objects + " objects are whole, and the store is."
                            : damages.size() + " of " + objects + " objects are damaged; nothing was changed."
                                    + " Put the files back from a copy.");
            int unindexed = inspection.unindexed();
            if (unindexed > 0) {
                terminal.line("No row speaks of " + unindexed + " object files; reindex takes them in.");
            }
            return damages.isEmpty() ? ExitCode.YES : ExitCode.NO;
        } catch (StoreDamaged damage) {
            terminal.line(String.valueOf(damage.getMessage()));
            return ExitCode.NO;
        }
    }
}
