// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.FrameExplanation;
import dev.plumbline.dicom.FrameExplanationJson;
import dev.plumbline.document.ScaleText;
import dev.plumbline.geometry.KnownDistance;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code frame FILE [--frame N] [--scale C1,R1,C2,R2,MM] [--png OUT] [--rendered OUT ...]}. */
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

    @Option(
            names = "--scale",
            paramLabel = "C1,R1,C2,R2,MM",
            description = "State the scale of a frame without one: two points (column, row) and the mm between them.")
    private Optional<String> scale = Optional.empty();

    @Mixin
    private RenderedFrame pictures = new RenderedFrame();

    @Option(names = "--json", description = "Print one JSON document instead of words.")
    private boolean json;

    FrameCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        DicomFile opened = CaseFiles.open(file);
        Optional<KnownDistance> stated = scale.map(ScaleText::read);
        FrameExplanation explanation = opened.explain(frameNumber, stated);
        pictures.of(opened, frameNumber, stated).forEach(ProductFiles::write);
        if (json) {
            terminal.json(FrameExplanationJson.of(explanation));
        } else {
            terminal.line(explanation.text());
        }
        return ExitCode.YES;
    }
}
