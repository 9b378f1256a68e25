// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleFrame;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.zip.CRC32;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sample objects judged by dicom3tools and pydicom. DICOM PS3.3 A.6 and A.7. */
class SampleObjectsConformanceTest {
    private static final String DESCRIBE = """
            import sys, zlib, pydicom
            for name in sys.argv[1:]:
                d = pydicom.dcmread(name)
                r = d.get('SequenceOfUltrasoundRegions', [])
                print(d.Rows, d.Columns, d.get('NumberOfFrames', 1), len(r), zlib.crc32(d.pixel_array.tobytes()))
                for i in r:
                    print(i.RegionLocationMinX0, i.RegionLocationMinY0, i.RegionLocationMaxX1,
                          i.RegionLocationMaxY1, round(i.PhysicalDeltaX * 1e9), round(i.PhysicalDeltaY * 1e9))
            """;

    @TempDir
    private static Path directory;

    @BeforeAll
    static void writeFiles() throws IOException {
        DrawnSamples.writeInto(directory);
    }

    @Test
    void everySampleIsAnUltrasoundObjectWithoutAnyErrorForDciodvfy() throws IOException {
        for (Sample sample : DrawnSamples.SET.all()) {
            List<String> lines = dciodvfy(directory.resolve(sample.name() + ".dcm"));

            assertThat(lines)
                    .as(sample.name())
                    .contains(sample.scene().frames() == 1 ? "USImage" : "USMultiFrameImage");
            assertThat(lines).as(sample.name()).noneMatch(line -> line.startsWith("Error"));
        }
    }

    @Test
    void pydicomFindsThePixelsAndTheRegionsThatWereDrawn() {
        List<String> command = new ArrayList<>(List.of("/usr/bin/python3", "-c", DESCRIBE));
        List<String> expected = new ArrayList<>();
        for (Sample sample : DrawnSamples.SET.all()) {
            command.add(directory.resolve(sample.name() + ".dcm").toString());
            describe(sample, expected);
        }

        byte[] described = OutsideProgram.run(command.toArray(String[]::new));

        assertThat(new String(described, StandardCharsets.UTF_8).lines()).isEqualTo(expected);
    }

    private static void describe(Sample sample, List<String> lines) {
        List<SampleFrame> frames = DrawnSamples.frames(sample);
        List<UltrasoundRegion> regions = sample.scene().truths().get(0).scale().regions();
        CRC32 crc = new CRC32();
        frames.forEach(frame -> crc.update(frame.pixels()));
        SampleFrame first = frames.get(0);
        lines.add(words(first.rows(), first.columns(), frames.size(), regions.size(), crc.getValue()));
        for (UltrasoundRegion region : regions) {
            lines.add(words(
                    region.bounds().minColumn(),
                    region.bounds().minRow(),
                    region.bounds().maxColumn(),
                    region.bounds().maxRow(),
                    Math.round(region.deltaX() * 1e9),
                    Math.round(region.deltaY() * 1e9)));
        }
    }

    private static String words(long... numbers) {
        List<String> words = new ArrayList<>();
        for (long number : numbers) {
            words.add(Long.toString(number));
        }
        return String.join(" ", words);
    }

    /** Its words go to standard error, its exit code says nothing. */
    private static List<String> dciodvfy(Path file) throws IOException {
        Path messages = directory.resolve("messages");
        Process process = new ProcessBuilder("dciodvfy", file.toString())
                .redirectErrorStream(true)
                .redirectOutput(messages.toFile())
                .start();
        try {
            assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
        return Files.readAllLines(messages, StandardCharsets.ISO_8859_1);
    }
}
