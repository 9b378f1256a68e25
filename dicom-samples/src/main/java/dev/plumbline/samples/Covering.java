// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import java.util.ArrayList;
import java.util.List;

/** What every body begins with: skin and fat. */
final class Covering {
    /** Loss of the beam in soft tissue at 8 to 12 MHz, both ways, dB per mm. */
    static final double LOSS = 0.9;
    /** The same at 3 to 5 MHz. */
    static final double DEEP_LOSS = 0.45;

    static final Border TOP = Border.flat(-50);
    static final Border BOTTOM = Border.flat(500);

    private Covering() {}

    /** Skin and fat down to a border; the list may be added to. */
    static List<Structure> of(double skinMm, Border fatEnds, SampleRandom random) {
        List<Structure> covering = new ArrayList<>();
        Border skinEnds = Border.level(skinMm, random);
        covering.add(new Layer(TOP, skinEnds, Weave.dermis(random), LOSS));
        covering.add(new Layer(skinEnds, fatEnds, Weave.fat(random.of("fat")), 0.8));
        return covering;
    }
}
