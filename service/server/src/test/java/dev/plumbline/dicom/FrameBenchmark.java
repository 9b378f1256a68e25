// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleSet;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How long frames take, and the same frame by DCMTK and pydicom as programs of their own (their start included). Wanted:
 * header of a cine of 300 MB under 50 ms, one frame of it under 100 ms, a 640 x 480 JPEG frame under 15 ms.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Benchmark)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class FrameBenchmark {
    private static final int CINE_FRAMES = 325;
    private static final int COLUMNS = 640;
    private static final int ROWS = 480;

    private Path folder = Path.of("");
    private Path cine = Path.of("");
    private Path jpeg = Path.of("");

    @Setup(Level.Trial)
    public void write() throws IOException {
        folder = Files.createTempDirectory("frames");
        cine = folder.resolve("cine.dcm");
        byte[] front = DicomFile.encode(
                TestImage.pixelModule(TestImage.ultrasound(FrameClass.US_MULTIFRAME), "RGB", CINE_FRAMES)
                        .put(Tag.ROWS, ROWS)
                        .put(Tag.COLUMNS, COLUMNS)
                        .put(Tag.PIXEL_DATA, new byte[2]));
        int length = CINE_FRAMES * ROWS * COLUMNS * 3;
        for (int i = 0; i < 4; i++) {
            front[front.length - 6 + i] = (byte) (length >>> 8 * i);
        }
        try (OutputStream out = Files.newOutputStream(cine)) {
            out.write(Arrays.copyOf(front, front.length - 2));
            byte[] frame = new byte[ROWS * COLUMNS * 3];
            for (int i = 0; i < CINE_FRAMES; i++) {
                Arrays.fill(frame, (byte) i);
                out.write(frame);
            }
        }
        SampleSet set = new SampleSet(1);
        Sample sample = set.all().stream()
                .filter(s -> s.scene().layout().columns() == COLUMNS)
                .findFirst()
                .orElseThrow();
        Path plain = Files.write(folder.resolve("plain.dcm"), new SampleObjects(set).file(sample));
        jpeg = folder.resolve("jpeg.dcm");
        OutsideProgram.run("dcmcjpeg", "+eb", plain.toString(), jpeg.toString());
    }

    @TearDown(Level.Trial)
    public void delete() throws IOException {
        try (var files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(folder);
    }

    @Benchmark
    public DicomFile headerOfA300MegabyteCine() throws IOException {
        return DicomFile.open(cine);
    }

    @Benchmark
    public BufferedImage frameOfA300MegabyteCine() throws IOException {
        return DicomFile.open(cine).image(CINE_FRAMES / 2);
    }

    @Benchmark
    public BufferedImage jpegFrame() throws IOException {
        return DicomFile.open(jpeg).image(1);
    }

    @Benchmark
    public FrameExplanation explanation() throws IOException {
        return DicomFile.open(jpeg).explain(1);
    }

    @Benchmark
    public byte[] jpegFrameByDcmtk() {
        return OutsideProgram.run("dcmj2pnm", "--write-raw-pnm", jpeg.toString());
    }

    @Benchmark
    public byte[] frameOfTheCineByDcmtk() {
        return OutsideProgram.run(
                "dcm2pnm", "--write-raw-pnm", "+F", Integer.toString(CINE_FRAMES / 2), cine.toString());
    }

    @Benchmark
    public byte[] headerOfTheCineByPydicom() {
        return pydicom("print(dcmread(sys.argv[1], stop_before_pixels=True).NumberOfFrames)", cine);
    }

    @Benchmark
    public byte[] frameOfTheCineByPydicom() {
        return pydicom("print(dcmread(sys.argv[1]).pixel_array[162].sum())", cine);
    }

    @Benchmark
    public byte[] jpegFrameByPydicom() {
        return pydicom("print(dcmread(sys.argv[1]).pixel_array.sum())", jpeg);
    }

    private static byte[] pydicom(String work, Path file) {
        return OutsideProgram.run(
                "/usr/bin/python3", "-c", "import sys; from pydicom import dcmread; " + work, file.toString());
    }
}
