// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.function.Supplier;

/** The commands for who keeps the service running. */
public final class SiteCommands {
    private final Terminal terminal;
    private final Clock clock;
    private final Supplier<Path> usualFolder;
    private final LifeOfRecord.InFolder inFolder;

    /**
     * Commands that share these.
     *
     * @param usualFolder where everything is kept when a configuration does not say
     * @param inFolder work on records where no service runs
     */
    public SiteCommands(Terminal terminal, Clock clock, Supplier<Path> usualFolder, LifeOfRecord.InFolder inFolder) {
        this.terminal = terminal;
        this.clock = clock;
        this.usualFolder = usualFolder;
        this.inFolder = inFolder;
    }

    List<Object> all() {
        return List.of(
                new RecordsCommand(terminal, usualFolder),
                new SignCommand(terminal, inFolder),
                new AmendCommand(terminal, inFolder),
                new WithdrawCommand(terminal, inFolder),
                new DispatchCommand(terminal, clock, usualFolder),
                new StatusCommand(terminal, clock, usualFolder),
                new VerifyCommand(terminal, clock),
                new CheckConfigCommand(terminal, clock),
                new DoctorCommand(terminal, usualFolder),
                new ReindexCommand(terminal, clock, usualFolder),
                new BackupCommand(terminal, usualFolder),
                new SupportBundleCommand(terminal, clock, usualFolder));
    }
}
