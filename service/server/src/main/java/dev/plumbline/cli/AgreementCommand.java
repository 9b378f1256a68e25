// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code agreement TABLE}. */
@Command(
        name = "agreement",
        mixinStandardHelpOptions = true,
        description = "How far observers agree who measured the same subjects: limits of agreement, intraclass"
                + " correlations, technical error, each with its interval.")
final class AgreementCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(
            paramLabel = "TABLE",
            description = "CSV: one column per observer, one row per subject; the first row may name the observers.")
    private Path table = Path.of("");

    @Option(
            names = "--level",
            paramLabel = "L",
            defaultValue = "0.95",
            description = "Level of the confidence intervals; ${DEFAULT-VALUE} where absent.")
    private double level;

    @Option(
            names = "--multiple",
            paramLabel = "M",
            defaultValue = "1.96",
            description = "Standard deviations from the mean difference to its limits; ${DEFAULT-VALUE} where absent.")
    private double multiple;

    @Option(names = "--json", description = "Print one JSON document instead of words.")
    private boolean json;

    AgreementCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        Agreement agreement = Agreement.of(RatingFile.read(table), multiple, level);
        if (json) {
            terminal.json(AgreementJson.of(agreement));
        } else {
            terminal.line(AgreementWords.of(agreement));
        }
        return ExitCode.YES;
    }
}
