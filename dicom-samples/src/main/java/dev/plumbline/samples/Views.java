// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.Region;
import java.util.Locale;
import java.util.Optional;

/** Panes of the usual makes: a probe, an imaging depth and a place on the screen. */
final class Views {
    private static final int TOP = 26;

    private Views() {}

    /** Flat face whose picture is as wide as the face; the picture's left edge stands at a column of the screen. */
    record Flat(double footprintMm, int columns, int rows, int left) {
        double mmPerPixel() {
            return footprintMm / columns;
        }

        /** Square pixels. */
        SamplePane of(Anatomy anatomy, Scanner scanner) {
            return of(anatomy, scanner, mmPerPixel());
        }

        SamplePane of(Anatomy anatomy, Scanner scanner, double mmPerRow) {
            ImageArea area = new ImageArea(
                    new Region(0, left, TOP, left + columns - 1, TOP + rows - 1),
                    new PixelSize(mmPerPixel(), mmPerRow),
                    new ScanPoint(-footprintMm / 2, 0));
            String words =
                    String.format(Locale.ROOT, "LINEAR %.0f MM  DEPTH %.1f CM", footprintMm, rows * mmPerRow / 10);
            SamplePane.Machine machine = new SamplePane.Machine(new Transducer.Linear(footprintMm), scanner, words);
            return new SamplePane(area, machine, anatomy, Optional.empty(), Optional.empty());
        }
    }

    /** Curved face; the picture shows the sector down to a depth below the face's middle. */
    static SamplePane curved(Transducer.Curved face, Anatomy anatomy, Scanner scanner) {
        int columns = 680;
        int rows = 560;
        double depthMm = 92;
        double pixel = (depthMm - face.skinDepthMm()) / rows;
        ImageArea area = new ImageArea(
                new Region(0, 62, TOP, 62 + columns - 1, TOP + rows - 1),
                new PixelSize(pixel, pixel),
                new ScanPoint(-pixel * columns / 2, face.skinDepthMm()));
        String words = String.format(Locale.ROOT, "CURVED R%.0f  DEPTH %.1f CM", face.radiusMm(), depthMm / 10);
        return new SamplePane(
                area, new SamplePane.Machine(face, scanner, words), anatomy, Optional.empty(), Optional.empty());
    }
}
