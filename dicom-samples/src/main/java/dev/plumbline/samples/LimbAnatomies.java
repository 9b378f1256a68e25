// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.TargetKind;
import java.util.List;

/** Invented limbs, each drawn from its own stream. Places and sizes are common anatomy, made by eye, no source. */
final class LimbAnatomies {
    /** The sciatic nerve above the knee. */
    static final NerveBundle.Oval SCIATIC = new NerveBundle.Oval(new ScanPoint(-5.6, 32.2), 4.2, 2.9, 0.12);

    private LimbAnatomies() {}

    /** The sciatic nerve above the knee, cut across: between two muscles, vessels and femur deeper. */
    static Anatomy popliteal(SampleRandom random) {
        Border fascia = Border.through(random, -19, 6.0, 0, 6.3, 19, 6.9);
        Border lateral = Border.through(random, -19, 5, -12, 8, -8, 14, -5, 20, -1, 24.2, 5, 26.3, 12, 28, 19, 30);
        Border medial = Border.through(random, -19, 29, -12, 28, -7, 26, -3, 22, 0, 16, 4, 5);
        List<Structure> body = Covering.of(1.5, fascia, random);
        Border bellies = Border.justAbove(lateral, medial);
        body.add(new Layer(bellies, Covering.BOTTOM, Weave.areolar(random.of("areolar")), Covering.LOSS));
        Border besideLateral = Border.justAbove(fascia, lateral);
        body.add(new Layer(besideLateral, medial, Weave.muscle(-0.10, 2.0, random.of("medial")), Covering.LOSS));
        body.add(new Layer(fascia, lateral, Weave.muscle(0.13, 5.5, random.of("lateral")), Covering.LOSS));
        body.add(Fascia.along(lateral, -21, random));
        body.add(Fascia.along(medial, -27, random));
        body.add(Fascia.along(fascia, -15, random));
        Border femur = Border.through(random, 2, 46, 6, 42.6, 10, 41.2, 14, 41.9, 18, 44.6, 20, 47);
        Bone bone = new Bone(femur, 3, 18.5, new Texture(random));
        Vessel artery = new Vessel(new ScanPoint(-9.8, 40.4), 2.6, 2.5, Vessel.Wall.ARTERY);
        Vessel vein = new Vessel(new ScanPoint(-4.9, 38.6), 2.3, 1.4, Vessel.Wall.VEIN);
        body.add(Patchiness.of(random));
        body.addAll(List.of(bone, artery, vein, NerveBundle.filled(SCIATIC, 0.66, random.of("nerve"))));
        return new Anatomy(
                body,
                "sciaticPopliteal",
                new ScanPoint(0, 30),
                TargetKind.NEAR_NERVE,
                List.of(
                        Anatomy.nerve("sciatic", SCIATIC),
                        Anatomy.vessel("popliteal artery", Hazard.Kind.ARTERY, artery),
                        Anatomy.vessel("popliteal vein", Hazard.Kind.VEIN, vein),
                        Anatomy.below("femur", Hazard.Kind.BONE, new Anatomy.Surface(femur, 3, 18.5, 45))));
    }

    /** The femoral nerve below the groin: beside the artery, under the iliac fascia, on muscle. */
    static Anatomy femoral(SampleRandom random) {
        return femoral(1, random);
    }

    /** The same with the vein pressed flat to a share of its height. */
    static Anatomy femoral(double veinOpen, SampleRandom random) {
        Border lata = Border.through(random, -19, 8, 19, 9);
        Border iliac = Border.through(random, -19, 16.4, -10, 17.8, -3, 19.1, 1.5, 21.2, 6, 23.9, 11, 25.4, 19, 26.3);
        List<Structure> body = Covering.of(1.4, lata, random);
        body.add(new Layer(lata, iliac, Weave.areolar(random.of("areolar")), Covering.LOSS));
        body.add(new Layer(iliac, Covering.BOTTOM, Weave.muscle(0.14, 2.2, random.of("psoas")), Covering.LOSS));
        body.add(Fascia.along(lata, -16, random));
        body.add(Fascia.along(iliac, -19, random));
        Vessel artery = new Vessel(new ScanPoint(6.6, 18.6), 3.9, 3.7, Vessel.Wall.ARTERY);
        Vessel vein =
                new Vessel(new ScanPoint(14.6, 20.4 + 2.2 * (1 - veinOpen)), 4.4, 3.1 * veinOpen, Vessel.Wall.VEIN);
        NerveBundle.Oval nerve = new NerveBundle.Oval(new ScanPoint(-1.6, 23.1), 4.4, 1.9, 0.14);
        body.add(Patchiness.of(random));
        body.addAll(List.of(vein, artery, NerveBundle.filled(nerve, 0.5, random.of("nerve"))));
        return new Anatomy(
                body,
                "femoralNerve",
                new ScanPoint(-3.0, 20),
                TargetKind.NEAR_NERVE,
                List.of(
                        Anatomy.nerve("femoral", nerve),
                        Anatomy.vessel("femoral artery", Hazard.Kind.ARTERY, artery),
                        Anatomy.vessel("femoral vein", Hazard.Kind.VEIN, vein)));
    }

    /** The median nerve in the middle of the forearm, between two layers of muscle. */
    static Anatomy forearm(SampleRandom random) {
        Border fascia = Border.through(random, -13, 3.4, 13, 3.1);
        Border middle = Border.through(random, -13, 9.5, -4, 10.2, 3, 10.8, 13, 9.8);
        Border floor = Border.through(random, -13, 19, 0, 20.5, 13, 19.5);
        List<Structure> body = Covering.of(1.1, fascia, random);
        body.add(new Layer(fascia, middle, Weave.muscle(0.02, 1.8, random.of("upper")), Covering.LOSS));
        body.add(new Layer(middle, floor, Weave.muscle(-0.03, 2.1, random.of("lower")), Covering.LOSS));
        body.add(new Layer(floor, Covering.BOTTOM, Weave.areolar(random.of("areolar")), Covering.LOSS));
        body.add(Fascia.along(fascia, -17, random));
        body.add(Fascia.along(middle, -20, random));
        body.add(Fascia.along(floor, -22, random));
        Border radius = Border.through(random, 4, 25, 7, 22.6, 10, 22.2, 13, 24.5);
        Bone bone = new Bone(radius, 4.5, 13, new Texture(random));
        Vessel artery = new Vessel(new ScanPoint(8.4, 8.0), 1.25, 1.2, Vessel.Wall.ARTERY);
        NerveBundle.Oval nerve = new NerveBundle.Oval(new ScanPoint(-0.8, 11.6), 2.6, 1.5, 0.02);
        body.add(Patchiness.of(random));
        body.addAll(List.of(bone, artery, NerveBundle.filled(nerve, 0.42, random.of("nerve"))));
        return new Anatomy(
                body,
                "medianNerve",
                new ScanPoint(2.2, 12.2),
                TargetKind.NEAR_NERVE,
                List.of(
                        Anatomy.nerve("median", nerve),
                        Anatomy.vessel("radial artery", Hazard.Kind.ARTERY, artery),
                        Anatomy.below("radius", Hazard.Kind.BONE, new Anatomy.Surface(radius, 4.5, 13, 28))));
    }

    /** The sciatic nerve in the buttock, deep under muscle between two bones; for a curved probe. */
    static Anatomy gluteal(SampleRandom random) {
        Border fascia = Border.through(random, -60, 17, 0, 15, 60, 18);
        Border belly = Border.through(random, -60, 48, -25, 53, 0, 55, 25, 54, 60, 50);
        Border under = Border.through(random, -60, 70, 0, 72, 60, 69);
        List<Structure> body = Covering.of(2.4, fascia, random);
        body.add(new Layer(fascia, belly, Weave.muscle(0.16, 13, random.of("maximus")), Covering.DEEP_LOSS));
        body.add(new Layer(belly, under, Weave.areolar(random.of("areolar")), Covering.DEEP_LOSS));
        body.add(new Layer(under, Covering.BOTTOM, Weave.muscle(0.05, 9, random.of("quadratus")), Covering.DEEP_LOSS));
        body.add(Fascia.along(fascia, -17, random));
        body.add(Fascia.along(belly, -19, random));
        body.add(Fascia.along(under, -24, random));
        Border trochanter = Border.through(random, 26, 74, 33, 62, 41, 57, 52, 60, 62, 70);
        Border ischium = Border.through(random, -48, 78, -39, 68, -31, 65, -24, 69, -19, 78);
        NerveBundle.Oval nerve = new NerveBundle.Oval(new ScanPoint(1.5, 61.5), 8.5, 3.4, 0.05);
        body.add(Patchiness.of(random));
        body.add(new Bone(trochanter, 27, 60, new Texture(random)));
        body.add(new Bone(ischium, -47, -20, new Texture(random)));
        body.add(NerveBundle.filled(nerve, 0.95, random.of("nerve")));
        return new Anatomy(
                body,
                "sciaticSubgluteal",
                new ScanPoint(4, 57.5),
                TargetKind.NEAR_NERVE,
                List.of(
                        Anatomy.nerve("sciatic", nerve),
                        Anatomy.below("trochanter", Hazard.Kind.BONE, new Anatomy.Surface(trochanter, 27, 60, 95)),
                        Anatomy.below("ischium", Hazard.Kind.BONE, new Anatomy.Surface(ischium, -47, -20, 95))));
    }
}
