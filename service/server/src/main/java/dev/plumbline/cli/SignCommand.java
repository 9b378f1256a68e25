// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.RecordLife;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code sign RECORD --by NAME}. */
@Command(
        name = "sign",
        mixinStandardHelpOptions = true,
        description =
                "Signs a draft: a new revision, complete and verified. What is missing blocks it unless a reason is given.")
final class SignCommand extends LifeOfRecord implements Callable<Integer> {
    @Option(names = "--by", required = true, paramLabel = "NAME", description = "Who signs, as a DICOM person name.")
    private String by = "";

    @Option(names = "--organization", paramLabel = "NAME", description = "Whose.")
    private Optional<String> organization = Optional.empty();

    @Option(names = "--role", paramLabel = "WORD", description = "In this procedure, such as performer.")
    private Optional<String> role = Optional.empty();

    @Option(
            names = "--time",
            paramLabel = "T",
            description = "Of the signature, ISO 8601 with offset; now where absent.")
    private Optional<String> time = Optional.empty();

    @Option(
            names = "--because",
            paramLabel = "ITEM=REASON",
            description = "Why a required item is missing; may be repeated.")
    private Map<String, String> because = Map.of();

    SignCommand(Terminal terminal, InFolder inFolder) {
        super(terminal, inFolder);
    }

    @Override
    public Integer call() throws IOException {
        ObjectNode body = JsonNodeFactory.instance.objectNode();
        ObjectNode signature = body.putObject("signature").put("name", by);
        organization.ifPresent(name -> signature.put("organization", name));
        role.ifPresent(word -> signature.put("role", word));
        time.ifPresent(when -> signature.put("time", when));
        if (!because.isEmpty()) {
            ObjectNode reasons = signature.putObject("incompleteBecause");
            because.forEach(reasons::put);
        }
        return does("sign", body, RecordLife::sign);
    }
}
