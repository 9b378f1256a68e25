// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.archive.Dispatch;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.dispatch.DispatchDesk;
import dev.plumbline.dispatch.DispatchJson;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code dispatch [list|show|retry|release|queue] [ID]}. */
@Command(
        name = "dispatch",
        mixinStandardHelpOptions = true,
        description = "Records on their way to other archives: lists them, shows one, tries one again, gives one up,"
                + " queues one that never was.")
final class DispatchCommand implements Callable<Integer> {
    private static final int MOST = 1_000;

    private final Terminal terminal;
    private final Clock clock;
    private final Supplier<Path> usualFolder;

    @Parameters(index = "0", arity = "0..1", paramLabel = "list|show|retry|release|queue", description = "What to do.")
    private Action action = Action.list;

    @Parameters(index = "1", arity = "0..1", paramLabel = "ID", description = "Which one; not for list and queue.")
    private Optional<Long> id = Optional.empty();

    @Option(names = "--state", paramLabel = "STATE", description = "Lists those queued, sent, proved or held.")
    private Optional<String> state = Optional.empty();

    @Option(names = "--record", paramLabel = "UID", description = "The record to be queued.")
    private Optional<String> recordUid = Optional.empty();

    @Option(names = "--json", description = "One JSON document instead of words.")
    private boolean json;

    @Mixin
    private SiteOption site = new SiteOption();

    /** The words are those of the command line. */
    enum Action {
        list,
        show,
        retry,
        release,
        queue
    }

    DispatchCommand(Terminal terminal, Clock clock, Supplier<Path> usualFolder) {
        this.terminal = terminal;
        this.clock = clock;
        this.usualFolder = usualFolder;
    }

    @Override
    public Integer call() throws IOException {
        boolean ofOne = action != Action.list && action != Action.queue;
        if (ofOne && id.isEmpty()) {
            throw new Refusal(new Problem.MissingField("ID", "Give the number that plumbline dispatch list shows."));
        }
        if (action == Action.queue && recordUid.isEmpty()) {
            throw new Refusal(new Problem.MissingField("--record", "Give the recordUid that plumbline records shows."));
        }
        ServiceConfig config = site.read();
        Optional<JsonNode> running = running(new RunningService(config));
        JsonNode answer = running.isPresent() ? running.get() : fromFolder(config);
        if (json) {
            terminal.json(answer);
        } else if (ofOne) {
            one(answer);
        } else {
            table(answer);
        }
        return ExitCode.YES;
    }

    private Optional<JsonNode> running(RunningService service) {
        String one = "/v1/dispatch/" + id.orElse(0L);
        return switch (action) {
            case list ->
                service.get("/v1/dispatch?limit=" + MOST
                        + state(state).map(s -> "&state=" + s.word()).orElse(""));
            case show -> service.get(one);
            case retry -> service.post(one + "/retry");
            case release -> service.post(one + "/release");
            case queue -> service.post("/v1/records/" + recordUid.orElseThrow() + "/dispatch");
        };
    }

    private JsonNode fromFolder(ServiceConfig config) throws IOException {
        Path data = config.dataFolder().orElseGet(usualFolder);
        try (DispatchDeskFile file = new DispatchDeskFile(data, config, clock)) {
            DispatchDesk desk = file.desk();
            return switch (action) {
                case list -> DispatchJson.list(desk, desk.list(state(state), MOST, 0));
                case show -> DispatchJson.whole(desk, desk.get(id.orElse(0L)));
                case retry -> DispatchJson.whole(desk, desk.retry(id.orElse(0L)));
                case release -> DispatchJson.whole(desk, desk.release(id.orElse(0L)));
                case queue -> DispatchJson.list(desk, desk.queue(recordUid.orElseThrow()));
            };
        }
    }

    private static Optional<Dispatch.State> state(Optional<String> word) {
        return word.map(text -> Arrays.stream(Dispatch.State.values())
                .filter(each -> each.word().equals(text))
                .findFirst()
                .orElseThrow(() -> new Refusal(new Problem.InvalidValue(
                        "--state", "There is no such state.", "Give queued, sent, proved or held."))));
    }

    private void table(JsonNode answer) {
        JsonNode counts = answer.path("counts");
        terminal.line(String.format(
                "%d queued, %d sent, %d proved, %d held, %d released",
                counts.path("queued").asInt(),
                counts.path("sent").asInt(),
                counts.path("proved").asInt(),
                counts.path("held").asInt(),
                counts.path("released").asInt()));
        if (answer.path("dispatches").isEmpty()) {
            return;
        }
        TextTable table = new TextTable().row(List.of("id", "state", "to", "age", "attempts", "last answer"));
        answer.path("dispatches")
                .forEach(each -> table.row(List.of(
                        each.path("id").asText(),
                        each.path("state").asText() + (each.path("released").isNull() ? "" : " (released)"),
                        each.path("destination").asText(),
                        each.path("age").asText(),
                        each.path("attempts").asText(),
                        lastAnswer(each))));
        terminal.line(table.text());
    }

    private static String lastAnswer(JsonNode dispatch) {
        return (dispatch.path("code").asText("") + " " + dispatch.path("reason").asText("")).strip();
    }

    private void one(JsonNode dispatch) {
        terminal.line("dispatch     " + dispatch.path("id").asText() + " to "
                + dispatch.path("destination").asText());
        terminal.line("record       " + dispatch.path("recordUid").asText());
        terminal.line("state        " + dispatch.path("state").asText()
                + (dispatch.path("released").isNull()
                        ? ""
                        : ", released " + dispatch.path("released").asText()));
        terminal.line("age          " + dispatch.path("age").asText());
        terminal.line("attempts     " + dispatch.path("attempts").asText());
        if (!dispatch.path("nextAttempt").isNull()) {
            terminal.line("next attempt " + dispatch.path("nextAttempt").asText());
        }
        dispatch.path("objects")
                .forEach(object -> terminal.line("  " + object.path("state").asText() + "  "
                        + object.path("sopInstanceUid").asText() + "  " + lastAnswer(object)));
    }
}
