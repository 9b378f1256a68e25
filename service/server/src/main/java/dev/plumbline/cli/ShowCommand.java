// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.RecordReader;
import dev.plumbline.dicom.RecordText;
import dev.plumbline.document.CaseJson;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code show RECORD.dcm}. */
@Command(
        name = "show",
        mixinStandardHelpOptions = true,
        description = "A record as text, or the case document it was made from.")
final class ShowCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "RECORD", description = "The report, a DICOM file.")
    private Path recordFile = Path.of("");

    @Option(names = "--json", description = "Print the case document instead.")
    private boolean json;

    ShowCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        DataSet report = CaseFiles.open(recordFile).header();
        if (json) {
            terminal.json(CaseJson.write(RecordReader.read(report)));
        } else {
            terminal.line(RecordText.of(report));
        }
        return ExitCode.YES;
    }
}
