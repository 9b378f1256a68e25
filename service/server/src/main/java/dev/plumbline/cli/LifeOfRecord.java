// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.RecordLife;
import dev.plumbline.archive.RecordList;
import dev.plumbline.archive.Records;
import dev.plumbline.archive.Standing;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.document.StrictJson;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A step in the life of a record: asked of the service where it runs, else done in its folder. */
public abstract class LifeOfRecord {
    private final Terminal terminal;
    private final InFolder inFolder;

    @Parameters(paramLabel = "RECORD", description = "UID of the report, as plumbline records shows it.")
    private String uid = "";

    @Option(names = "--json", description = "One JSON document instead of words.")
    private boolean json;

    @Mixin
    private SiteOption site = new SiteOption();

    /** Work on the records of a folder that no service uses. */
    public interface InFolder {
        /**
         * Does the work.
         *
         * @throws dev.plumbline.problem.Refusal when another process uses the folder
         */
        Records.Reply with(ServiceConfig config, Function<Records, Records.Reply> work) throws IOException;
    }

    LifeOfRecord(Terminal terminal, InFolder inFolder) {
        this.terminal = terminal;
        this.inFolder = inFolder;
    }

    /** One of the steps that a record can take. */
    interface Doing {
        Records.Reply on(RecordLife life, RecordLife.Step step, Records.Wording<Standing> wording);
    }

    int does(String word, ObjectNode body, Doing doing) throws IOException {
        ServiceConfig config = site.read();
        Optional<JsonNode> running = new RunningService(config).post("/v1/records/" + uid + "/" + word, body);
        JsonNode answer = running.isPresent() ? running.get() : inFolder(config, body, doing);
        if (json) {
            terminal.json(answer);
        } else {
            terminal.line(answer.path("recordUid").asText() + "  "
                    + answer.path("state").asText() + "  " + answer.path("time").asText());
        }
        return ExitCode.YES;
    }

    private JsonNode inFolder(ServiceConfig config, ObjectNode body, Doing doing) throws IOException {
        RecordLife.Step step = new RecordLife.Step(uid, body, Optional.empty(), Optional.empty());
        Records.Reply reply = inFolder.with(
                config,
                records -> doing.on(
                        records.life(), step, kept -> RecordList.named(kept).toString()));
        return StrictJson.read(reply.body().getBytes(StandardCharsets.UTF_8));
    }
}
