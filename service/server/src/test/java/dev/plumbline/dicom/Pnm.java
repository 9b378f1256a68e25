// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** Images as DCMTK's programs show them: binary PGM and PPM. */
final class Pnm {
    private Pnm() {}

    /** Samples of all bands of a frame by DCMTK, which must have its program for this kind of compression. */
    static int[] byDcmtk(String program, Path file, int frame, String... options) {
        List<String> command =
                new java.util.ArrayList<>(List.of(program, "--write-raw-pnm", "+F", Integer.toString(frame)));
        command.addAll(Arrays.asList(options));
        command.add(file.toString());
        return samples(OutsideProgram.run(command.toArray(String[]::new)));
    }

    /** Samples of a binary PGM or PPM, pixel by pixel. */
    static int[] samples(byte[] pnm) {
        String head = new String(pnm, 0, Math.min(pnm.length, 200), StandardCharsets.ISO_8859_1);
        String[] fields = head.replaceAll("#[^\n]*\n", "").split("\\s+", 5);
        int count = Integer.parseInt(fields[1]) * Integer.parseInt(fields[2]) * (fields[0].equals("P6") ? 3 : 1);
        assertThat(fields[0]).isIn("P5", "P6");
        assertThat(fields[3]).isEqualTo("255");
        int[] samples = new int[count];
        for (int i = 0; i < count; i++) {
            samples[i] = pnm[pnm.length - count + i] & 0xff;
        }
        return samples;
    }

    static int[] samples(BufferedImage image) {
        Raster raster = image.getRaster();
        return raster.getPixels(0, 0, raster.getWidth(), raster.getHeight(), (int[]) null);
    }

    /** The largest difference between two images' samples. */
    static int difference(int[] one, int[] other) {
        assertThat(one).hasSameSizeAs(other);
        int largest = 0;
        for (int i = 0; i < one.length; i++) {
            largest = Math.max(largest, Math.abs(one[i] - other[i]));
        }
        return largest;
    }
}
