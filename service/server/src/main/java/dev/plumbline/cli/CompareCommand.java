// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.document.AnswerJson;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code compare CASE}. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        description = "Plan, observations and how each differs from the plan. Exit 0 whatever the difference.")
final class CompareCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "CASE", description = "The case document.")
    private Path caseFile = Path.of("");

    @Option(names = "--json", description = "Print one JSON document instead of words.")
    private boolean json;

    @Mixin
    private Drawings drawings = new Drawings();

    CompareCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        CaseFiles.Loaded loaded = CaseFiles.load(caseFile);
        Comparison comparison =
                Comparison.of(loaded.inputs().plan(), loaded.inputs().observations());
        drawings.comparison(loaded, comparison);
        if (json) {
            terminal.json(AnswerJson.comparison(comparison));
        } else {
            terminal.line(ComparisonWords.of(comparison));
            terminal.cautions();
        }
        return ExitCode.YES;
    }
}
