// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.FrameExplanation;
import dev.plumbline.dicom.FrameExplanationJson;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code frame FILE [--frame N] [--png OUT]}. */
@Command(
        name = "frame",
        mixinStandardHelpOptions = true,
        description = "What the scale of a frame is, where it comes from, and why.")
final class FrameCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "FILE", description = "A DICOM image.")
    private Path file = Path.of("");

    @Option(
            names = "--frame",
            paramLabel = "N",
            defaultValue = "1",
            description = "Frame number, from 1; ${DEFAULT-VALUE} where absent.")
    private int frameNumber;

    @Option(names = "--png", paramLabel = "OUT", description = "Draw the frame with its regions into this file.")
    private Optional<Path> png = Optional.empty();

    @Option(names = "--json", description = "Print one JSON document instead of words.")
    private boolean json;

    FrameCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        DicomFile opened = CaseFiles.open(file);
        FrameExplanation explanation = opened.explain(frameNumber);
        if (png.isPresent()) {
            ProductFiles.write(png.get(), Drawings.png(opened.regionPicture(frameNumber)));
        }
        if (json) {
            terminal.json(FrameExplanationJson.of(explanation));
        } else {
            terminal.line(explanation.text());
        }
        return ExitCode.YES;
    }
}
