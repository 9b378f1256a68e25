// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.TargetKind;
import java.util.ArrayList;
import java.util.List;

/** Invented bodies, each drawn from its own stream. Places and sizes are common anatomy, made by eye, no source. */
final class Anatomies {
    private static final double LOSS = 0.9;
    private static final Border TOP = Border.flat(-50);
    private static final Border BOTTOM = Border.flat(500);

    private Anatomies() {}

    /** Gel, skin and fat down to a border. */
    private static List<Structure> cover(double skinMm, Border fatEnds, SampleRandom random) {
        List<Structure> cover = new ArrayList<>();
        Border skinEnds = Border.level(skinMm, random);
        cover.add(new Layer(TOP, skinEnds, Weave.dermis(random), LOSS));
        cover.add(new Layer(skinEnds, fatEnds, Weave.fat(random.of("fat")), 0.8));
        return cover;
    }

    /** The sciatic nerve above the knee, cut across: between two muscles, vessels and femur deeper. */
    static Anatomy popliteal(SampleRandom random) {
        Border fascia = Border.through(random, -19, 6.0, 0, 6.3, 19, 6.9);
        Border lateral = Border.through(random, -19, 5, -12, 8, -8, 14, -5, 20, -1, 24.2, 5, 26.3, 12, 28, 19, 30);
        Border medial = Border.through(random, -19, 29, -12, 28, -7, 26, -3, 22, 0, 16, 4, 5);
        List<Structure> body = cover(1.5, fascia, random);
        body.add(new Layer(fascia, BOTTOM, Weave.areolar(random.of("areolar")), LOSS));
        body.add(new Layer(fascia, medial, Weave.muscle(-0.10, 2.0, random.of("medial")), LOSS));
        body.add(new Layer(fascia, lateral, Weave.muscle(0.13, 5.5, random.of("lateral")), LOSS));
        body.add(Fascia.along(lateral, -21, random));
        body.add(Fascia.along(medial, -27, random));
        body.add(Fascia.along(fascia, -15, random));
        Border femur = Border.through(random, 2, 46, 6, 42.6, 10, 41.2, 14, 41.9, 18, 44.6, 20, 47);
        Bone bone = new Bone(femur, 3, 18.5, new Texture(random));
        Vessel artery = new Vessel(new ScanPoint(-9.8, 40.4), 2.6, 2.5, Vessel.Wall.ARTERY);
        Vessel vein = new Vessel(new ScanPoint(-4.9, 38.6), 2.3, 1.4, Vessel.Wall.VEIN);
        NerveBundle.Oval nerve = new NerveBundle.Oval(new ScanPoint(-5.6, 32.2), 4.2, 2.9, 0.12);
        body.add(Patchiness.of(random));
        body.addAll(List.of(bone, artery, vein, NerveBundle.filled(nerve, 0.66, random.of("nerve"))));
        return new Anatomy(
                body,
                "poplitealSciatic",
                new ScanPoint(0, 30),
                TargetKind.NEAR_NERVE,
                List.of(
                        Anatomy.nerve("sciatic", nerve),
                        Anatomy.vessel("popliteal artery", Hazard.Kind.ARTERY, artery),
                        Anatomy.vessel("popliteal vein", Hazard.Kind.VEIN, vein),
                        Anatomy.below("femur", Hazard.Kind.BONE, new Anatomy.Surface(femur, 3, 18.5, 45))));
    }

    /** The femoral nerve below the groin: beside the artery, under the iliac fascia, on muscle. */
    static Anatomy femoral(SampleRandom random) {
        Border lata = Border.through(random, -19, 8, 19, 9);
        Border iliac = Border.through(random, -19, 16.4, -10, 17.8, -3, 19.1, 1.5, 21.2, 6, 23.9, 11, 25.4, 19, 26.3);
        List<Structure> body = cover(1.4, lata, random);
        body.add(new Layer(lata, iliac, Weave.areolar(random.of("areolar")), LOSS));
        body.add(new Layer(iliac, BOTTOM, Weave.muscle(0.14, 2.2, random.of("psoas")), LOSS));
        body.add(Fascia.along(lata, -16, random));
        body.add(Fascia.along(iliac, -19, random));
        Vessel artery = new Vessel(new ScanPoint(6.6, 18.6), 3.9, 3.7, Vessel.Wall.ARTERY);
        Vessel vein = new Vessel(new ScanPoint(14.6, 20.4), 4.4, 3.1, Vessel.Wall.VEIN);
        NerveBundle.Oval nerve = new NerveBundle.Oval(new ScanPoint(-1.6, 23.1), 4.4, 1.9, 0.14);
        body.add(Patchiness.of(random));
        body.addAll(List.of(vein, artery, NerveBundle.filled(nerve, 0.5, random.of("nerve"))));
        return new Anatomy(
                body,
                "femoral",
                new ScanPoint(-3.0, 20),
                TargetKind.NEAR_NERVE,
                List.of(
                        Anatomy.nerve("femoral", nerve),
                        Anatomy.vessel("femoral artery", Hazard.Kind.ARTERY, artery),
                        Anatomy.vessel("femoral vein", Hazard.Kind.VEIN, vein)));
    }

    /** Nothing but scatterers of one strength: the field that speckle statistics are measured on. */
    static Anatomy phantom() {
        return new Anatomy(
                List.of(new Layer(TOP, BOTTOM, Weave.plain(-36), LOSS)),
                "none",
                new ScanPoint(0, 20),
                TargetKind.NEAR_NERVE,
                List.of());
    }
}
