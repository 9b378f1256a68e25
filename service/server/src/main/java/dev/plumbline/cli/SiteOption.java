// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.config.ServiceConfig;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Supplier;
import picocli.CommandLine.Option;

/** {@code --config FILE}: which service a command is about. */
final class SiteOption {
    @Option(names = "--config", paramLabel = "FILE", description = "Its configuration; defaults where absent.")
    private Optional<Path> file = Optional.empty();

    ServiceConfig read() {
        return file.map(ServiceConfig::read).orElse(ServiceConfig.USUAL);
    }

    Path dataFolder(Supplier<Path> usual) {
        return read().dataFolder().orElseGet(usual);
    }
}
