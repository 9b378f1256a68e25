// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.RecordLife;
import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code withdraw RECORD --reason WORD --text TEXT --by NAME}. */
@Command(
        name = "withdraw",
        mixinStandardHelpOptions = true,
        description = "Withdraws a record with its earlier revisions by a rejection note; nothing is deleted.")
final class WithdrawCommand extends LifeOfRecord implements Callable<Integer> {
    @Option(
            names = "--reason",
            required = true,
            paramLabel = "WORD",
            description = "wrongPatientOrSide, wrongWorklistEntry, inappropriateProcessing or other.")
    private String reason = "";

    @Option(names = "--text", required = true, paramLabel = "TEXT", description = "The reason in words.")
    private String text = "";

    @Option(
            names = "--by",
            required = true,
            paramLabel = "NAME",
            description = "Who withdraws, as a DICOM person name.")
    private String by = "";

    @Option(
            names = "--time",
            paramLabel = "T",
            description = "Of the withdrawal, ISO 8601 with offset; now where absent.")
    private Optional<String> time = Optional.empty();

    WithdrawCommand(Terminal terminal, InFolder inFolder) {
        super(terminal, inFolder);
    }

    @Override
    public Integer call() throws IOException {
        ObjectNode body = JsonNodeFactory.instance
                .objectNode()
                .put("reason", reason)
                .put("text", text)
                .put("by", by);
        time.ifPresent(when -> body.put("time", when));
        return does("withdraw", body, RecordLife::withdraw);
    }
}
