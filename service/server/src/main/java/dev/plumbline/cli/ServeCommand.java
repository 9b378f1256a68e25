// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code serve [--config FILE]}. */
@Command(
        name = "serve",
        mixinStandardHelpOptions = true,
        description = "The service with its embedded archive, until it is stopped.")
final class ServeCommand implements Callable<Integer> {
    private final Serving serving;

    @Option(names = "--config", paramLabel = "FILE", description = "JSON configuration; defaults where absent.")
    private Optional<Path> config = Optional.empty();

    ServeCommand(Serving serving) {
        this.serving = serving;
    }

    @Override
    public Integer call() throws Exception {
        serving.serve(config);
        return ExitCode.YES;
    }

    /** Runs the service until it is stopped. */
    @FunctionalInterface
    public interface Serving {
        void serve(Optional<Path> config) throws Exception;
    }
}
