// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.Region;
import java.util.Optional;

/** A field of one strength under a flat face, for measuring the generator itself. */
final class Phantom {
    static final Transducer.Linear FACE = new Transducer.Linear(38);

    private Phantom() {}

    static SamplePane pane(Scanner scanner) {
        ImageArea area = new ImageArea(new Region(0, 0, 0, 474, 499), new PixelSize(0.08, 0.08), new ScanPoint(-19, 0));
        return new SamplePane(
                area,
                new SamplePane.Machine(FACE, scanner, ""),
                TrunkAnatomies.phantom(),
                Optional.empty(),
                Optional.empty());
    }

    static Scanner scanner(double gainDb, int looks) {
        Scanner usual = Scanner.high(20);
        return new Scanner(usual.pulse(), usual.focus(), usual.receiver(), new Scanner.Display(gainDb, 60), looks);
    }

    static SampleScene still(SamplePane pane) {
        return SampleSet.still(new SampleScene.Layout(475, 500, false, SampleScene.ScaleStatement.REGIONS), pane);
    }
}
