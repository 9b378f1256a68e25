// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.RecordPages;
import dev.plumbline.dicom.RecordReader;
import dev.plumbline.document.CaseJson;
import dev.plumbline.record.FrameRef;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code show RECORD.dcm}. */
@Command(
        name = "show",
        mixinStandardHelpOptions = true,
        description = "A record as text, or the case document it was made from; also as page, paper or drawing.")
final class ShowCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "RECORD", description = "The report, a DICOM file.")
    private Path recordFile = Path.of("");

    @Option(names = "--json", description = "Print the case document instead.")
    private boolean json;

    @Option(names = "--html", paramLabel = "OUT", description = "Write the record as one page for a browser.")
    private Optional<Path> html = Optional.empty();

    @Option(names = "--pdf", paramLabel = "OUT", description = "Write the record as PDF, on A4 pages.")
    private Optional<Path> pdf = Optional.empty();

    @Option(names = "--svg", paramLabel = "OUT", description = "Write the drawings of the record.")
    private Optional<Path> svg = Optional.empty();

    @Option(
            names = "--frame",
            paramLabel = "FILE",
            description = "A frame of the record, a DICOM file, to be drawn on; may be repeated.")
    private List<Path> frames = List.of();

    ShowCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        DataSet report = CaseFiles.open(recordFile).header();
        write(report);
        if (json) {
            terminal.json(CaseJson.write(RecordReader.read(report)));
        } else {
            terminal.line(RecordPages.text(report));
        }
        return ExitCode.YES;
    }

    private void write(DataSet report) throws IOException {
        if (html.isEmpty() && pdf.isEmpty() && svg.isEmpty()) {
            return;
        }
        Map<String, DicomFile> files = new HashMap<>();
        for (Path frame : frames) {
            DicomFile file = CaseFiles.open(frame);
            files.put(file.sopInstanceUid(), file);
        }
        RecordPages pages = RecordPages.of(report, ref -> picture(files, (FrameRef.Held) ref));
        html.ifPresent(path -> ProductFiles.write(path, pages.html().getBytes(StandardCharsets.UTF_8)));
        svg.ifPresent(path -> ProductFiles.write(path, pages.svg().getBytes(StandardCharsets.UTF_8)));
        pdf.ifPresent(path -> ProductFiles.write(path, pages.pdf()));
    }

    private static Optional<BufferedImage> picture(Map<String, DicomFile> files, FrameRef.Held frame) {
        DicomFile file = files.get(frame.sopInstanceUid());
        try {
            return file == null ? Optional.empty() : Optional.of(file.image(frame.frameNumber()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
