// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** Pins the pictures and leaves them under {@code target/samples} to be looked at. */
class SamplePicturesTest {
    private static final Path LOOK_HERE = Path.of("target", "samples");

    @Test
    void writesEveryPictureToBeLookedAt() throws IOException {
        Files.createDirectories(LOOK_HERE);
        SampleSet set = new SampleSet(7);
        for (Sample sample : set.all()) {
            List<SampleFrame> frames = set.render(sample);
            SampleFrame last = frames.get(frames.size() - 1);
            Path file = LOOK_HERE.resolve(sample.name() + ".png");
            assertThat(ImageIO.write(image(last), "png", file.toFile())).isTrue();
            assertThat(frames).hasSize(sample.scene().frames());
            assertThat(sample.scene().truths()).hasSize(frames.size());
        }
    }

    /** Fails on a machine, a Java version or a change that draws anything else; a deliberate change says why in its commit. */
    @Test
    void theSameSeedGivesTheSamePixelsEverywhere() {
        assertThat(crc(7)).isEqualTo(3707270225L);
    }

    @Test
    void anotherSeedGivesAnotherPicture() {
        assertThat(crc(8)).isNotEqualTo(crc(7));
    }

    private static long crc(long seed) {
        SampleSet set = new SampleSet(seed);
        Sample sample = set.inPlaneNeedle();
        CRC32 crc = new CRC32();
        crc.update(set.render(sample).get(0).pixels());
        return crc.getValue();
    }

    private static BufferedImage image(SampleFrame frame) {
        BufferedImage image = new BufferedImage(frame.columns(), frame.rows(), BufferedImage.TYPE_INT_RGB);
        byte[] pixels = frame.pixels();
        int samples = frame.samplesPerPixel();
        for (int i = 0; i < frame.columns() * frame.rows(); i++) {
            int red = pixels[i * samples] & 0xff;
            int green = pixels[i * samples + samples / 2] & 0xff;
            int blue = pixels[i * samples + samples - 1] & 0xff;
            image.setRGB(i % frame.columns(), i / frame.columns(), red << 16 | green << 8 | blue);
        }
        return image;
    }
}
