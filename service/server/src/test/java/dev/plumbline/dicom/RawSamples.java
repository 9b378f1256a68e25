// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.io.IOException;
import java.nio.file.Path;

/** The samples of a frame as they were stored, before any window, palette or colour conversion. */
final class RawSamples {
    private RawSamples() {}

    /** Pixel by pixel; frames count from 1. */
    static int[] of(Path file, int frame) throws IOException {
        PixelBytes pixels = Gate.inspect(file).pixels().orElseThrow();
        DicomFile opened = DicomFile.open(file);
        ImageDescription description = ImageDescription.of(opened.header(), pixels.shape());
        Samples samples = new FrameReader(file, opened.transferSyntax(), description).read(pixels, frame - 1);
        int unused = Integer.SIZE - description.bitsStored();
        int[] interleaved = new int[samples.pixels() * samples.bands()];
        for (int pixel = 0; pixel < samples.pixels(); pixel++) {
            for (int band = 0; band < samples.bands(); band++) {
                int shifted = samples.at(band, pixel) << unused;
                interleaved[pixel * samples.bands() + band] =
                        description.signed() ? shifted >> unused : shifted >>> unused;
            }
        }
        return interleaved;
    }
}
