// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/** How the scatter of a tissue varies from place to place: its grain as a reader of ultrasound knows it. */
interface Weave {
    /** Level of the scatter in dB. */
    double level(Cell cell);

    /** The same everywhere. */
    static Weave plain(double level) {
        return cell -> level;
    }

    /** Dermis: bright, denser towards the surface. */
    static Weave dermis(SampleRandom random) {
        Texture grain = new Texture(random);
        return cell -> -21 + 5 * grain.at(cell.across / 0.8, cell.layer / 0.22) - 4 * cell.layer;
    }

    /** Fat: dark lobules parted by thin bright septa that mostly run along the skin. */
    static Weave fat(SampleRandom random) {
        Texture lobes = new Texture(random.of("lobes"));
        Texture finer = new Texture(random.of("finer"));
        return cell -> {
            double fine = finer.at(cell.across / 2.1, cell.layer / 0.8);
            double relief = lobes.at(cell.across / 6.5, cell.layer / 1.5) + 0.35 * fine;
            double septum = Cell.bell(relief, 0.085);
            return -44 + 3 * fine + septum * (9 + 6 * fine);
        };
    }

    /**
     * Muscle: dark bundles with bright streaks of perimysium between them.
     *
     * @param tilt depth gained by the fibres per millimetre to the right
     * @param lengthMm of a streak: long where fibres run in the plane, short where they cross it
     */
    static Weave muscle(double tilt, double lengthMm, SampleRandom random) {
        Texture bundles = new Texture(random.of("bundles"));
        Texture streaks = new Texture(random.of("streaks"));
        double lines = Math.min(1, lengthMm / 5);
        return cell -> {
            double across = cell.across;
            double coarse = bundles.at(across / (1.7 * lengthMm), cell.layer / 3.2);
            double turned = cell.layer - tilt * across + 0.7 * coarse;
            double relief = streaks.at(across / lengthMm, turned / 0.72);
            double finer = streaks.at(across / (0.45 * lengthMm) + 40, turned / 0.36);
            double streak =
                    lines * Cell.bell(relief - 0.15 * coarse, 0.10) + (1.1 - 0.5 * lines) * Cell.step(finer, 0.3, 1);
            return -48 + 3 * coarse + 2.5 * finer + (11 + 5 * coarse) * streak;
        };
    }

    /** Connective tissue and fat between muscles, where nerves and vessels run: brighter, without order. */
    static Weave areolar(SampleRandom random) {
        Texture coarse = new Texture(random.of("coarse"));
        Texture fine = new Texture(random.of("fine"));
        return cell -> {
            double grain = fine.at(cell.across / 1.5, cell.layer / 0.7);
            double relief = coarse.at(cell.across / 3.4, cell.layer / 1.5);
            double strand = Cell.bell(relief + 0.35 * grain, 0.09);
            return -40 + 4 * relief + 3.5 * grain + 4 * strand;
        };
    }
}
