// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cines larger than the heap and than 2 GiB, as sparse files; read by a Java machine of its own with a small heap. */
class LargeCineTest {
    private static final int SIDE = 1024;
    private static final int FRAME_BYTES = SIDE * SIDE * 3;

    @TempDir
    Path folder;

    @Test
    void readsOneFrameOfACineOfOneGigabyte() throws IOException {
        assertThat(lastFrame(cine(342))).contains("frames 342 red 200 green 100 blue 50");
    }

    @Test
    void readsTheLastFrameOfACineOfThreeGigabytes() throws IOException {
        assertThat(lastFrame(cine(1000))).contains("frames 1000 red 200 green 100 blue 50");
    }

    private static String lastFrame(Path cine) {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        return new String(
                OutsideProgram.run(
                        java,
                        "-Xmx256m",
                        "-Djava.awt.headless=true",
                        "-cp",
                        System.getProperty("java.class.path"),
                        LargeCineTest.class.getName(),
                        cine.toString()),
                StandardCharsets.UTF_8);
    }

    /** What the machine with the small heap runs. */
    public static void main(String[] args) throws IOException {
        DicomFile file = DicomFile.open(Path.of(args[0]));
        int[] pixel = file.image(file.frameCount()).getRaster().getPixel(1023, 1023, (int[]) null);
        System.out.printf("frames %d red %d green %d blue %d%n", file.frameCount(), pixel[0], pixel[1], pixel[2]);
    }

    /** All black but the last pixel of the last frame. */
    private Path cine(int frames) throws IOException {
        DataSet image = TestImage.pixelModule(TestImage.ultrasound(FrameClass.US_MULTIFRAME), "RGB", frames)
                .put(Tag.ROWS, SIDE)
                .put(Tag.COLUMNS, SIDE)
                .put(Tag.PIXEL_DATA, new byte[2]);
        byte[] small = DicomFile.encode(image);
        long length = (long) FRAME_BYTES * frames;
        byte[] front = Arrays.copyOf(small, small.length - 2);
        for (int i = 0; i < 4; i++) {
            front[front.length - 4 + i] = (byte) (length >>> 8 * i);
        }
        Path file = Files.createFile(folder.resolve("cine.dcm"));
        try (RandomAccessFile out = new RandomAccessFile(file.toFile(), "rw")) {
            out.write(front);
            out.setLength(front.length + length);
            out.seek(front.length + length - 3);
            out.write(new byte[] {(byte) 200, 100, 50});
        }
        return file;
    }
}
