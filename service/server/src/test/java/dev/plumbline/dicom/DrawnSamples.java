// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleFrame;
import dev.plumbline.samples.SampleSet;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The sample set of one seed, each picture drawn once for all tests. */
final class DrawnSamples {
    static final SampleSet SET = new SampleSet(7);

    private static final Map<String, List<SampleFrame>> FRAMES = new HashMap<>();

    private DrawnSamples() {}

    static List<SampleFrame> frames(Sample sample) {
        return FRAMES.computeIfAbsent(sample.name(), name -> SET.render(sample));
    }

    static Path write(Sample sample, Path directory) throws IOException {
        DataSet object = new SampleObjects(SET).object(sample, frames(sample));
        return Files.write(directory.resolve(sample.name() + ".dcm"), DicomFile.encode(object));
    }

    static void writeInto(Path directory) throws IOException {
        for (Sample sample : SET.all()) {
            write(sample, directory);
        }
    }
}
