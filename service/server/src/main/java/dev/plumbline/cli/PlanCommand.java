// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.deviation.Comparison;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code plan CASE}. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        description =
                "A plan for a case: where to enter, how deep, what forbids it. Exit 1 when it does not fit the limits.")
final class PlanCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "CASE", description = "The case document.")
    private Path caseFile = Path.of("");

    @Option(names = "--json", description = "Print one JSON document instead of words.")
    private boolean json;

    @Mixin
    private Drawings drawings = new Drawings();

    @Mixin
    private Needles needles = new Needles();

    PlanCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        CaseFiles.Loaded loaded = CaseFiles.load(caseFile);
        Comparison comparison =
                Comparison.planOnly(loaded.inputs().plan(), loaded.inputs().observations());
        drawings.plan(loaded, comparison);
        if (json) {
            terminal.json(needles.answers().plan(loaded.document(), comparison.plan()));
        } else {
            terminal.line(PlanWords.of(comparison.plan(), loaded.document(), needles.catalogue()));
            terminal.cautions();
        }
        return comparison.plan().feasible() ? ExitCode.YES : ExitCode.NO;
    }
}
