// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.RecordLife;
import dev.plumbline.document.StrictJson;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code amend RECORD --case CASE --reason TEXT}. */
@Command(
        name = "amend",
        mixinStandardHelpOptions = true,
        description = "Replaces a signed record by a corrected one that names it; the earlier one stays as it is.")
final class AmendCommand extends LifeOfRecord implements Callable<Integer> {
    @Option(
            names = "--case",
            required = true,
            paramLabel = "CASE",
            description = "The whole case document as it should have been, signed; frames by sopInstanceUid.")
    private Path caseFile = Path.of("");

    @Option(names = "--reason", required = true, paramLabel = "TEXT", description = "Why it is amended.")
    private String reason = "";

    AmendCommand(Terminal terminal, InFolder inFolder) {
        super(terminal, inFolder);
    }

    @Override
    public Integer call() throws IOException {
        if (!Files.isRegularFile(caseFile)) {
            throw CaseFiles.unreadable("", caseFile);
        }
        ObjectNode body = JsonNodeFactory.instance.objectNode().put("reason", reason);
        try (InputStream in = Files.newInputStream(caseFile)) {
            body.set("case", StrictJson.read(in));
        }
        return does("amend", body, RecordLife::amend);
    }
}
