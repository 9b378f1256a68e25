// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.dicom.CheckReport;
import dev.plumbline.dicom.TemplateCheck;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code check RECORD.dcm}. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = "Whether a report is as our templates say, row by row. Exit 1 when it is not.")
final class CheckCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "RECORD", description = "The report, a DICOM file.")
    private Path recordFile = Path.of("");

    CheckCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        CheckReport found = TemplateCheck.check(CaseFiles.open(recordFile).header());
        found.lines().forEach(line -> terminal.line(line.toString()));
        terminal.line(
                found.conforms()
                        ? "The report conforms to the templates."
                        : "The report does not conform: " + found.lines().size() + " findings.");
        return found.conforms() ? ExitCode.YES : ExitCode.NO;
    }
}
