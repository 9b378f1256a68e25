// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The largest frame that passes the gate, 8192 x 8192, as a sparse file; shown by a Java machine with a stated heap. */
class LargeFrameTest {
    private static final int SIDE = PixelShape.MAX_SIDE;

    @TempDir
    Path folder;

    @Test
    void showsAGreyFrameWithin256Megabytes() throws IOException {
        assertThat(shown(frame("MONOCHROME2", 1), "-Xmx256m")).contains("last sample 200");
    }

    @Test
    void showsAFrameInColourWithin640Megabytes() throws IOException {
        assertThat(shown(frame("RGB", 3), "-Xmx640m")).contains("last sample 200");
    }

    @Test
    void namesTheMemoryThatIsMissing() throws IOException {
        assertThat(shown(frame("RGB", 3), "-Xmx256m")).contains("One frame needs 384 MB of memory");
    }

    private static String shown(Path file, String heap) throws IOException {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        return new String(
                OutsideProgram.run(
                        java,
                        heap,
                        "-Djava.awt.headless=true",
                        "-cp",
                        System.getProperty("java.class.path"),
                        LargeFrameTest.class.getName(),
                        file.toString()),
                StandardCharsets.UTF_8);
    }

    /** What the machine with the stated heap runs. */
    public static void main(String[] args) throws IOException {
        try {
            BufferedImage image = DicomFile.open(Path.of(args[0])).image(1);
            System.out.printf("last sample %d%n", image.getRaster().getSample(SIDE - 1, SIDE - 1, 0));
        } catch (dev.plumbline.problem.Refusal refusal) {
            System.out.println(refusal.problem().detail());
        }
    }

    /** All black but the last pixel. */
    private Path frame(String photometric, int samples) throws IOException {
        byte[] small = DicomFile.encode(TestImage.pixelModule(TestImage.ultrasound(FrameClass.US_IMAGE), photometric, 1)
                .put(Tag.ROWS, SIDE)
                .put(Tag.COLUMNS, SIDE)
                .put(Tag.PIXEL_DATA, new byte[2]));
        long length = (long) SIDE * SIDE * samples;
        byte[] front = Arrays.copyOf(small, small.length - 2);
        for (int i = 0; i < 4; i++) {
            front[front.length - 4 + i] = (byte) (length >>> 8 * i);
        }
        Path file = Files.createFile(folder.resolve("frame.dcm"));
        try (RandomAccessFile out = new RandomAccessFile(file.toFile(), "rw")) {
            out.write(front);
            out.setLength(front.length + length);
            byte[] last = new byte[samples];
            Arrays.fill(last, (byte) 200);
            out.seek(front.length + length - samples);
            out.write(last);
        }
        return file;
    }
}
