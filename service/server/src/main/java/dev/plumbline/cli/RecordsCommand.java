// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.RecordList;
import dev.plumbline.archive.RecordQuery;
import dev.plumbline.archive.RecordTable;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.config.ServiceConfig;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code records [FILTERS] [--json | --csv]}. */
@Command(
        name = "records",
        mixinStandardHelpOptions = true,
        description = "Records that meet every filter, newest first. Columns of the CSV: docs/records.md.")
final class RecordsCommand implements Callable<Integer> {
    private static final String NOTHING = "-";

    private final Terminal terminal;
    private final Supplier<Path> usualFolder;

    @Option(
            names = "--where",
            paramLabel = "FILTER=VALUE",
            description = "caseId, patient, from, to, block, operator, laterality, state, current or differs; may be"
                    + " repeated, also limit and offset.")
    private Map<String, String> where = new LinkedHashMap<>();

    @Option(names = "--patient", paramLabel = "ID", description = "Patient ID.")
    private Optional<String> patient = Optional.empty();

    @Option(names = "--from", paramLabel = "DAY", description = "Day of the record or later.")
    private Optional<String> from = Optional.empty();

    @Option(names = "--to", paramLabel = "DAY", description = "Day of the record or earlier.")
    private Optional<String> to = Optional.empty();

    @Option(names = "--block", paramLabel = "WORD", description = "Code word of the block.")
    private Optional<String> block = Optional.empty();

    @Option(names = "--operator", paramLabel = "NAME", description = "Whole name of the operator.")
    private Optional<String> operator = Optional.empty();

    @Option(names = "--laterality", paramLabel = "SIDE", description = "right, left or midline.")
    private Optional<String> laterality = Optional.empty();

    @Option(names = "--state", paramLabel = "STATE", description = "draft, signed, amended or withdrawn.")
    private Optional<String> state = Optional.empty();

    @Option(names = "--differs", description = "Those that differ from the plan by more than the uncertainty.")
    private boolean differs;

    @Option(names = "--json", description = "One JSON document.")
    private boolean json;

    @Option(names = "--csv", description = "A table for other programs, RFC 4180.")
    private boolean csv;

    @Mixin
    private SiteOption site = new SiteOption();

    RecordsCommand(Terminal terminal, Supplier<Path> usualFolder) {
        this.terminal = terminal;
        this.usualFolder = usualFolder;
    }

    @Override
    public Integer call() throws IOException {
        Map<String, String> parameters = parameters();
        RecordQuery query = RecordQuery.of(parameters, RecordQuery.MOST, RecordQuery.WHOLE);
        ServiceConfig config = site.read();
        Optional<JsonNode> running = new RunningService(config).get("/v1/records?" + encoded(parameters, query));
        JsonNode answer = running.isPresent() ? running.get() : fromFolder(config, query);
        if (json) {
            terminal.json(answer);
        } else if (csv) {
            terminal.out().print(RecordTable.csv(answer.path("records")));
            terminal.out().flush();
        } else {
            table(answer);
        }
        int shown = answer.path("records").size();
        if (shown + query.offset() < answer.path("total").asInt()) {
            terminal.note("plumbline: " + shown + " of " + answer.path("total").asInt()
                    + " records; the next with --where offset=" + (shown + query.offset()) + ".");
        }
        return ExitCode.YES;
    }

    private Map<String, String> parameters() {
        Map<String, String> parameters = new LinkedHashMap<>(where);
        patient.ifPresent(value -> parameters.put("patient", value));
        from.ifPresent(value -> parameters.put("from", value));
        to.ifPresent(value -> parameters.put("to", value));
        block.ifPresent(value -> parameters.put("block", value));
        operator.ifPresent(value -> parameters.put("operator", value));
        laterality.ifPresent(value -> parameters.put("laterality", value));
        state.ifPresent(value -> parameters.put("state", value));
        if (differs) {
            parameters.put("differs", "true");
        }
        return parameters;
    }

    private static String encoded(Map<String, String> parameters, RecordQuery query) {
        Map<String, String> all = new LinkedHashMap<>(parameters);
        all.put("limit", String.valueOf(Math.min(query.limit(), RecordQuery.MOST)));
        return all.entrySet().stream()
                .map(entry -> entry.getKey() + "=" + URLEncoder.encode(entry.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
    }

    private JsonNode fromFolder(ServiceConfig config, RecordQuery query) throws IOException {
        try (DataFolder folder = DataFolder.open(config.dataFolder().orElseGet(usualFolder));
                SqliteStore store = SqliteStore.open(folder.databaseInUse())) {
            return new RecordList(store, query).json();
        }
    }

    private void table(JsonNode answer) {
        TextTable table = new TextTable()
                .row(List.of("time", "state", "patient", "block", "side", "operator", "differs in", "record"));
        for (JsonNode row : answer.path("records")) {
            List<String> differsIn = new java.util.ArrayList<>();
            row.path("differsIn").forEach(each -> differsIn.add(each.asText()));
            table.row(List.of(
                    row.path("time").asText(),
                    row.path("state").asText(),
                    text(row, "patientId"),
                    text(row, "block"),
                    text(row, "laterality"),
                    text(row, "operator"),
                    differsIn.isEmpty() ? NOTHING : String.join(", ", differsIn),
                    row.path("recordUid").asText()));
        }
        terminal.line(table.text());
        terminal.line(answer.path("total").asInt() + " records.");
    }

    private static String text(JsonNode row, String name) {
        return row.path(name).isTextual() ? row.path(name).textValue() : NOTHING;
    }
}
