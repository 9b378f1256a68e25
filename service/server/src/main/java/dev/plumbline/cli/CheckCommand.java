// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.dicom.CheckReport;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.ObjectCheck;
import dev.plumbline.dicom.Tag;
import dev.plumbline.dicom.TemplateCheck;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
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

    @Option(
            names = "--frame",
            paramLabel = "FILE",
            description =
                    "An object that it names, a DICOM file, to see that every frame named exists; may be repeated.")
    private List<Path> frames = List.of();

    CheckCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        ObjectCheck.Result result = ObjectCheck.check(CaseFiles.open(recordFile).header(), counts());
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

    /** How many frames the named files have; an object without a number of frames has one. */
    private TemplateCheck.FrameCounts counts() throws IOException {
        Map<String, Integer> known = new HashMap<>();
        for (Path frame : frames) {
            DicomFile file = CaseFiles.open(frame);
            known.put(
                    file.sopInstanceUid(),
                    file.header().integer(Tag.NUMBER_OF_FRAMES).orElse(1));
        }
        return uid -> known.containsKey(uid) ? OptionalInt.of(known.get(uid)) : OptionalInt.empty();
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
