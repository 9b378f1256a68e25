// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleFrame;
import dev.plumbline.samples.SampleSet;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Sample objects judged by dicom3tools, DCMTK and pydicom. DICOM PS3.3 A.6 and A.7. */
class SampleObjectsConformanceTest {
    private static final SampleSet SET = new SampleSet(7);
    private static final String DESCRIBE = """
            import sys, zlib, pydicom
            d = pydicom.dcmread(sys.argv[1])
            r = d.get('SequenceOfUltrasoundRegions', [])
            print(d.Rows, d.Columns, d.get('NumberOfFrames', 1), len(r), zlib.crc32(d.pixel_array.tobytes()))
            for i in r:
                print(i.RegionLocationMinX0, i.RegionLocationMinY0, i.RegionLocationMaxX1, i.RegionLocationMaxY1,
                      repr(i.PhysicalDeltaX), repr(i.PhysicalDeltaY))
            """;

    @TempDir
    private Path directory;

    static Stream<String> names() {
        return SET.all().stream().map(Sample::name);
    }

    @ParameterizedTest
    @MethodSource("names")
    void isAnUltrasoundObjectWithoutAnyErrorForDciodvfy(String name) throws IOException {
        Path file = write(name);

        Path messages = directory.resolve("messages");
        Process process = new ProcessBuilder("dciodvfy", file.toString())
                .redirectErrorStream(true)
                .redirectOutput(messages.toFile())
                .start();
        waitFor(process);

        List<String> lines = Files.readAllLines(messages, StandardCharsets.ISO_8859_1);
        assertThat(lines).contains(sample(name).scene().frames() == 1 ? "USImage" : "USMultiFrameImage");
        assertThat(lines).noneMatch(line -> line.startsWith("Error"));
    }

    @ParameterizedTest
    @MethodSource("names")
    void pydicomFindsThePixelsAndTheRegionsThatWereDrawn(String name) throws IOException {
        Path file = write(name);
        Sample sample = sample(name);

        List<String> lines = new String(
                        OutsideProgram.run("python3", "-c", DESCRIBE, file.toString()), StandardCharsets.UTF_8)
                .lines()
                .toList();

        assertThat(lines).isEqualTo(expected(sample));
    }

    private static List<String> expected(Sample sample) {
        List<SampleFrame> frames = SET.render(sample);
        CRC32 crc = new CRC32();
        frames.forEach(frame -> crc.update(frame.pixels()));
        List<UltrasoundRegion> regions = sample.scene().truths().get(0).scale().regions();
        Stream<String> first = Stream.of(frames.get(0).rows() + " "
                + frames.get(0).columns() + " " + frames.size() + " " + regions.size() + " " + crc.getValue());
        Stream<String> each = regions.stream()
                .map(region -> region.bounds().minColumn() + " "
                        + region.bounds().minRow() + " "
                        + region.bounds().maxColumn() + " " + region.bounds().maxRow() + " " + region.deltaX() + " "
                        + region.deltaY());
        return Stream.concat(first, each).toList();
    }

    private Path write(String name) throws IOException {
        return Files.write(directory.resolve(name + ".dcm"), new SampleObjects(SET).file(sample(name)));
    }

    private static Sample sample(String name) {
        return SET.all().stream()
                .filter(sample -> sample.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static void waitFor(Process process) {
        try {
            assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
