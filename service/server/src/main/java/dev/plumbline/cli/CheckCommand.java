// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.dicom.CheckReport;
import dev.plumbline.dicom.ObjectCheck;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code check RECORD.dcm}. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description =
                "Whether a report is as our templates say, row by row, or another object of a record as it should be. "
                        + "Exit 1 when it is not.")
final class CheckCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "RECORD", description = "The report, or another object of a record, a DICOM file.")
    private Path recordFile = Path.of("");

    @Option(names = "--findings-only", description = "Leave out the rows that were met.")
    private boolean findingsOnly;

    CheckCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        ObjectCheck.Result result = ObjectCheck.check(CaseFiles.open(recordFile).header());
        CheckReport found = result.report();
        if (!found.rows().isEmpty() && !findingsOnly) {
            terminal.line(rows(found));
        }
        found.lines().forEach(line -> terminal.line(line.toString()));
        terminal.line("The " + result.kind()
                + (found.conforms()
                        ? " conforms" + (found.rows().isEmpty() ? "." : " to the templates.")
                        : " does not conform: " + found.lines().size() + " findings."));
        return found.conforms() ? ExitCode.YES : ExitCode.NO;
    }

    /** Every row that content items were taken for, how many, and where the first stands. */
    private static String rows(CheckReport found) {
        TextTable table = new TextTable().row(List.of("template row", "items", "first at"));
        for (CheckReport.Row row : found.rows()) {
            table.row(List.of(row.title(), String.valueOf(row.items()), row.first()));
        }
        return table.text() + "\n";
    }
}
