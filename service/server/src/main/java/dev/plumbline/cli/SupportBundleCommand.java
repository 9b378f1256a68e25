// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.dispatch.DispatchDesk;
import dev.plumbline.dispatch.DispatchJson;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/**
 * {@code support-bundle}. Made of what cannot speak of a patient: numbers, states, codes, times and the configuration; no
 * identifier of a case or an object, no text that somebody or another archive wrote.
 */
@Command(
        name = "support-bundle",
        mixinStandardHelpOptions = true,
        description = "Prints what helps to find a fault as one JSON document that can be sent away: version, machine,"
                + " configuration without secrets, states and counts. Nothing in it speaks of a patient.")
final class SupportBundleCommand implements Callable<Integer> {
    private static final int MOST = 200;
    private static final List<String> OF_STATUS =
            List.of("state", "dispatch", "destinations", "freeBytes", "unindexedFiles");
    private static final List<String> OF_DISPATCH = List.of(
            "id",
            "state",
            "destination",
            "revision",
            "created",
            "ageSeconds",
            "attempts",
            "nextAttempt",
            "composed",
            "code",
            "released");

    private final Terminal terminal;
    private final Clock clock;
    private final Supplier<Path> usualFolder;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Mixin
    private SiteOption site = new SiteOption();

    SupportBundleCommand(Terminal terminal, Clock clock, Supplier<Path> usualFolder) {
        this.terminal = terminal;
        this.clock = clock;
        this.usualFolder = usualFolder;
    }

    @Override
    public Integer call() throws IOException {
        ServiceConfig config = site.read();
        ObjectNode bundle = JsonNodeFactory.instance
                .objectNode()
                .put("schema", "plumbline-support/1")
                .put("made", clock.instant().toString())
                .put("version", spec.root().version()[0]);
        bundle.set("machine", machine());
        bundle.set("configuration", config.effective());
        RunningService running = new RunningService(config);
        Optional<JsonNode> status = running.get("/v1/status");
        bundle.put("running", status.isPresent());
        if (status.isPresent()) {
            Optional<JsonNode> list = running.get("/v1/dispatch?limit=" + MOST);
            add(bundle, status.get(), list.orElseGet(JsonNodeFactory.instance::objectNode));
        } else {
            addFromFolder(bundle, config);
        }
        terminal.json(bundle);
        return ExitCode.YES;
    }

    private static ObjectNode machine() {
        Runtime runtime = Runtime.getRuntime();
        return JsonNodeFactory.instance
                .objectNode()
                .put("java", Runtime.version().toString())
                .put("system", System.getProperty("os.name") + " " + System.getProperty("os.version"))
                .put("architecture", System.getProperty("os.arch"))
                .put("processors", runtime.availableProcessors())
                .put("mostHeapBytes", runtime.maxMemory());
    }

    private void addFromFolder(ObjectNode bundle, ServiceConfig config) throws IOException {
        try (DispatchDeskFile file = new DispatchDeskFile(config.dataFolder().orElseGet(usualFolder), config, clock)) {
            DispatchDesk desk = file.desk();
            add(bundle, file.report().json(), DispatchJson.list(desk, desk.list(Optional.empty(), MOST, 0)));
        }
    }

    private static void add(ObjectNode bundle, JsonNode status, JsonNode list) {
        ObjectNode told = chosen(status, OF_STATUS);
        told.put("damages", status.path("damages").size());
        told.put("companionsDue", status.path("companionsDue").path("records").asInt());
        bundle.set("status", told);
        var dispatches = bundle.putArray("dispatches");
        list.path("dispatches").forEach(each -> dispatches.add(chosen(each, OF_DISPATCH)));
    }

    private static ObjectNode chosen(JsonNode from, List<String> fields) {
        ObjectNode to = JsonNodeFactory.instance.objectNode();
        fields.forEach(field -> to.set(field, from.path(field)));
        return to;
    }
}
