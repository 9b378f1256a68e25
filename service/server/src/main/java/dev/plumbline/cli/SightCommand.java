// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.document.SightJson;
import dev.plumbline.document.StrictJson;
import dev.plumbline.record.SightSoFar;
import dev.plumbline.record.SiteRules;
import dev.plumbline.sight.Advice;
import dev.plumbline.sight.NeedleInside;
import dev.plumbline.sight.SightQuestion;
import dev.plumbline.sight.SightSearch;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code sight CASE|QUESTION}. */
@Command(
        name = "sight",
        mixinStandardHelpOptions = true,
        description = "The next single action for a needle that is not seen, by the log of a case or by a question.")
final class SightCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final SiteRules site;

    @Parameters(paramLabel = "CASE", description = "The case document, or a question with approach and state.")
    private Path file = Path.of("");

    @Option(names = "--json", description = "Print one JSON document instead of words.")
    private boolean json;

    SightCommand(Terminal terminal, SiteRules site) {
        this.terminal = terminal;
        this.site = site;
    }

    @Override
    public Integer call() throws IOException {
        Advice advice = new SightSearch(site.sight()).next(question());
        if (json) {
            terminal.json(SightJson.of(advice));
        } else {
            terminal.line(SightJson.text(advice));
            terminal.cautions();
        }
        return ExitCode.YES;
    }

    private SightQuestion question() throws IOException {
        if (!Files.isRegularFile(file)) {
            throw CaseFiles.unreadable("", file);
        }
        try (InputStream in = Files.newInputStream(file)) {
            JsonNode document = StrictJson.read(in);
            if (SightJson.isQuestion(document)) {
                return SightJson.question(document);
            }
        }
        CaseFiles.Loaded loaded = CaseFiles.load(file);
        return SightSoFar.question(
                loaded.document().bedside().log(),
                loaded.document().approach(),
                NeedleInside.planned(
                        Comparison.planOnly(
                                        loaded.inputs().plan(), loaded.inputs().observations())
                                .plan()
                                .readings(),
                        loaded.inputs().plan().probe().beamThicknessMm()));
    }
}
