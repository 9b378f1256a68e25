// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.archive.Backup;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code backup --to DIR}. */
@Command(
        name = "backup",
        mixinStandardHelpOptions = true,
        description = "Copies the data folder, while the service runs; the same folder again copies only what is new.")
final class BackupCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Supplier<Path> usualFolder;

    @Option(names = "--to", paramLabel = "DIR", required = true, description = "Where the copy goes.")
    private Path to = Path.of("");

    @Mixin
    private SiteOption site = new SiteOption();

    BackupCommand(Terminal terminal, Supplier<Path> usualFolder) {
        this.terminal = terminal;
        this.usualFolder = usualFolder;
    }

    @Override
    public Integer call() throws IOException {
        Backup.Copied copied = Backup.of(site.dataFolder(usualFolder), to);
        terminal.line("The state and " + copied.objects() + " new objects were copied to " + to
                + ". To restore, name that folder as dataFolder.");
        return ExitCode.YES;
    }
}
