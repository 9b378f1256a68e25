// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.config.ServiceConfig;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code status}. */
@Command(
        name = "status",
        mixinStandardHelpOptions = true,
        description = "How things stand, in words for a telephone call. Exit 1 when a person has to act.")
final class StatusCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Clock clock;
    private final Supplier<Path> usualFolder;

    @Option(names = "--json", description = "One JSON document instead of words.")
    private boolean json;

    @Mixin
    private SiteOption site = new SiteOption();

    StatusCommand(Terminal terminal, Clock clock, Supplier<Path> usualFolder) {
        this.terminal = terminal;
        this.clock = clock;
        this.usualFolder = usualFolder;
    }

    @Override
    public Integer call() throws IOException {
        ServiceConfig config = site.read();
        Optional<JsonNode> running = new RunningService(config).get("/v1/status");
        if (running.isEmpty()) {
            terminal.note("The service is not running; this is from its folder.");
        }
        JsonNode answer = running.isPresent() ? running.get() : fromFolder(config);
        if (json) {
            terminal.json(answer);
        } else {
            terminal.line(answer.path("text").asText());
        }
        boolean fine = answer.path("state").asText().equals("ok")
                && !answer.path("personNeeded").asBoolean();
        return fine ? ExitCode.YES : ExitCode.NO;
    }

    private JsonNode fromFolder(ServiceConfig config) throws IOException {
        Path data = config.dataFolder().orElseGet(usualFolder);
        try (DispatchDeskFile file = new DispatchDeskFile(data, config, clock)) {
            return file.report().json();
        }
    }
}
