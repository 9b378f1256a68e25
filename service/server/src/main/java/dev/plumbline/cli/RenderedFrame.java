// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.dicom.Appearance;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Window;
import dev.plumbline.geometry.KnownDistance;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options by which a command shows a frame as a picture. */
final class RenderedFrame {
    @Option(names = "--png", paramLabel = "OUT", description = "Draw the frame with its regions into this file.")
    private Optional<Path> regionPicture = Optional.empty();

    @Option(
            names = "--rendered",
            paramLabel = "OUT",
            description = "Write the frame as a PNG picture into this file; the next four options say how.")
    private Optional<Path> rendered = Optional.empty();

    @Option(
            names = "--window",
            paramLabel = "C,W",
            description = "Show grey values around center C over width W; C,W,FUNCTION as in DICOM.")
    private Optional<String> window = Optional.empty();

    @Option(names = "--scale-bar", description = "Draw a bar of known length.")
    private boolean scaleBar;

    @Option(names = "--regions", description = "Draw the regions.")
    private boolean regions;

    @Option(names = "--mask", description = "Black outside the ultrasound regions. What is burnt into a region stays.")
    private boolean mask;

    /**
     * The pictures that are asked for, by the file they go to; nothing is written yet.
     *
     * @throws Refusal where the frame cannot be shown so
     */
    Map<Path, byte[]> of(DicomFile file, int frameNumber, Optional<KnownDistance> scale) throws IOException {
        if (rendered.isEmpty() && (window.isPresent() || scaleBar || regions || mask)) {
            throw new Refusal(new Problem.InvalidValue(
                    "",
                    "The options --window, --scale-bar, --regions and --mask say how to show a picture, and none is asked for.",
                    "Name its file with --rendered."));
        }
        Map<Path, byte[]> pictures = new LinkedHashMap<>();
        if (regionPicture.isPresent()) {
            Appearance withRegions = new Appearance(Optional.empty(), false, true, true, scale);
            pictures.put(regionPicture.get(), Drawings.png(file.picture(frameNumber, withRegions)));
        }
        if (rendered.isPresent()) {
            Appearance asked = new Appearance(window.map(Window::of), mask, regions, scaleBar, scale);
            pictures.put(rendered.get(), Drawings.png(file.picture(frameNumber, asked)));
        }
        return pictures;
    }
}
