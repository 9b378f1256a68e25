// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import com.pixelmed.dicom.AttributeList;
import com.pixelmed.dicom.DicomException;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Damaged files: each is refused, or the toolkit reads the whole of it without a complaint. {@code
 * -Dplumbline.mutations=100000} runs more than the usual number.
 */
class GateMutationTest {
    private static final int MUTATIONS = Integer.getInteger("plumbline.mutations", 5000);
    private static final long SEED = 20260105;

    @TempDir
    Path folder;

    private int refused;
    private int read;
    private int decoded;
    private int undecodable;

    @Test
    void refusesDamagedFilesOrReadsThemWhole() throws IOException {
        List<byte[]> originals = originals();
        Random random = new Random(SEED);
        Path file = folder.resolve("mutated.dcm");
        for (int i = 0; i < MUTATIONS; i++) {
            long seed = random.nextLong();
            byte[] mutated = mutate(originals.get(i % originals.size()), new Random(seed));
            Files.write(file, mutated);
            assertTimeoutPreemptively(Duration.ofSeconds(10), () -> open(file), "seed " + seed);
        }
        System.out.printf(
                "%d mutated files: %d refused, %d read whole, of these %d decoded and %d refused by the decoder%n",
                MUTATIONS, refused, read, decoded, undecodable);
        assertThat(refused + read).isEqualTo(MUTATIONS);
        assertThat(refused).as("damage is found").isGreaterThan(MUTATIONS / 4);
        assertThat(read).as("harmless damage, as in pixels and names, passes").isGreaterThan(MUTATIONS / 10);
    }

    private void open(Path file) throws IOException {
        DicomFile opened;
        try {
            opened = DicomFile.open(file);
        } catch (Refusal e) {
            assertThat(e.getMessage()).isNotBlank();
            refused++;
            return;
        }
        if (!opened.transferSyntax().encapsulated()) {
            readWhole(file);
        }
        read++;
        decode(opened);
    }

    /** Compressed pixel data are never read by the toolkit: it looks for their end in the compressed bytes. */
    private static void readWhole(Path file) throws IOException {
        AttributeList whole = new AttributeList();
        whole.setDecompressPixelData(false);
        try {
            ToolkitLog.watch(() -> whole.read(file.toFile()));
        } catch (DicomException e) {
            throw new AssertionError("The toolkit refuses what the gate let through", e);
        }
    }

    private void decode(DicomFile opened) throws IOException {
        if (!opened.isImage()) {
            return;
        }
        try {
            opened.geometry(1);
            opened.image(opened.frameCount());
            decoded++;
        } catch (Refusal e) {
            undecodable++;
        }
    }

    private List<byte[]> originals() throws IOException {
        DataSet region = TestImage.region(0.01, 0.02);
        byte[] explicit = DicomFile.encode(TestImage.withRegions(TestImage.rgb(2), region, region));
        byte[] report = Files.readAllBytes(RealObject.pydicom("test-SR.dcm"));
        byte[] implicit = Files.readAllBytes(RealObject.pydicom("MR_small_implicit.dcm"));
        byte[] big = Files.readAllBytes(RealObject.ultrasoundImage());
        byte[] rle = Files.readAllBytes(RealObject.pydicom("SC_rgb_rle_2frame.dcm"));
        byte[] jpeg = Files.readAllBytes(RealObject.pydicom("SC_rgb_dcmtk_+eb+cy+n1.dcm"));
        byte[] jpegLs = encoded("dcmcjpls", "+el");
        byte[] jpeg2000 = encoded("gdcmconv", "--j2k");
        byte[] jpegLossless = encoded("dcmcjpeg", "+e1");
        return List.of(explicit, report, implicit, big, rle, jpeg, jpegLs, jpeg2000, jpegLossless);
    }

    private byte[] encoded(String program, String option) throws IOException {
        Path plain = TestImage.write(TestImage.rgb(2), folder);
        Path target = folder.resolve(program + ".dcm");
        OutsideProgram.run(program, option, plain.toString(), target.toString());
        return Files.readAllBytes(target);
    }

    private static byte[] mutate(byte[] original, Random random) {
        byte[] bytes = original.clone();
        // most damage goes where the structure is, not into the pixels
        int range = random.nextInt(4) == 0 ? bytes.length : Math.min(bytes.length, 2500);
        int at = random.nextInt(range);
        int length = 1 + random.nextInt(16);
        return switch (random.nextInt(8)) {
            case 0 -> flip(bytes, at, random);
            case 1 -> overwrite(bytes, at, length, random);
            case 2 -> Arrays.copyOf(bytes, at);
            case 3 -> spliced(bytes, at, at, randomBytes(length, random));
            case 4 -> spliced(bytes, at, Math.min(at + length, bytes.length), new byte[0]);
            case 5 -> spliced(bytes, at, at, Arrays.copyOfRange(bytes, at, Math.min(at + 64, bytes.length)));
            case 6 -> spliced(bytes, at, Math.min(at + 4, bytes.length), extreme(random));
            default ->
                flip(flip(flip(bytes, at, random), random.nextInt(range), random), random.nextInt(range), random);
        };
    }

    private static byte[] flip(byte[] bytes, int at, Random random) {
        bytes[at] ^= (byte) (1 << random.nextInt(8));
        return bytes;
    }

    private static byte[] overwrite(byte[] bytes, int at, int length, Random random) {
        int end = Math.min(at + length, bytes.length);
        System.arraycopy(randomBytes(end - at, random), 0, bytes, at, end - at);
        return bytes;
    }

    private static byte[] randomBytes(int length, Random random) {
        byte[] bytes = new byte[length];
        random.nextBytes(bytes);
        return bytes;
    }

    private static byte[] extreme(Random random) {
        byte[][] lengths = {
            {-1, -1, -1, -1}, {-2, -1, -1, 127}, {0, 0, 0, -128}, {0, 0, 0, 0}, {-2, -1, 0, -32}, {-2, -1, 13, -32}
        };
        return lengths[random.nextInt(lengths.length)];
    }

    private static byte[] spliced(byte[] bytes, int from, int to, byte[] inserted) {
        byte[] result = new byte[bytes.length - (to - from) + inserted.length];
        System.arraycopy(bytes, 0, result, 0, from);
        System.arraycopy(inserted, 0, result, from, inserted.length);
        System.arraycopy(bytes, to, result, from + inserted.length, bytes.length - to);
        return result;
    }
}
