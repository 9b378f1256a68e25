// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.TargetKind;
import java.util.List;

/** Invented trunks, each drawn from its own stream. Places and sizes are common anatomy, made by eye, no source. */
final class TrunkAnatomies {
    private TrunkAnatomies() {}

    /** The wall of the belly at the flank: three sheets of muscle, then bowel. */
    static Anatomy abdominalWall(SampleRandom random) {
        Border fat = Border.through(random, -24, 11, 0, 10.2, 24, 9.4);
        Border first = Border.through(random, -24, 17.5, 0, 17.0, 24, 15.6);
        Border second = Border.through(random, -24, 26.0, -6, 25.6, 8, 24.4, 24, 21.5);
        Border third = Border.through(random, -24, 30.2, 0, 29.6, 24, 25.0);
        Border bowel = Border.through(random, -24, 33.4, -8, 33.0, 6, 32.2, 24, 28.0);
        List<Structure> body = Covering.of(1.7, fat, random);
        body.add(new Layer(fat, first, Weave.muscle(0.04, 6, random.of("external")), Covering.LOSS));
        body.add(new Layer(first, second, Weave.muscle(-0.05, 6, random.of("internal")), Covering.LOSS));
        body.add(new Layer(second, third, Weave.muscle(0.03, 7, random.of("transversus")), Covering.LOSS));
        body.add(new Layer(third, bowel, Weave.areolar(random.of("areolar")), Covering.LOSS));
        body.add(Fascia.along(fat, -17, random));
        body.add(Fascia.along(first, -17, random));
        body.add(Fascia.along(second, -16, random));
        body.add(Fascia.along(third, -17, random));
        body.add(Patchiness.of(random));
        body.add(AirSurface.of(bowel, AirSurface.Air.IN_BOWEL, random));
        return new Anatomy(
                body,
                "transversusAbdominisMidaxillary",
                new ScanPoint(-3, 25.6),
                TargetKind.FASCIAL_PLANE,
                List.of(Anatomy.below("bowel", Hazard.Kind.BOWEL, new Anatomy.Surface(bowel, -22, 22, 40))));
    }

    /** The side of the chest: muscle over two ribs with their shadows, and the pleural line between. */
    static Anatomy chestWall(SampleRandom random) {
        Border fat = Border.through(random, -20, 6.2, 20, 5.6);
        Border muscle = Border.through(random, -20, 13.2, 0, 13.6, 20, 12.8);
        Border pleura = Border.through(random, -20, 24.6, 0, 24.0, 20, 24.4);
        List<Structure> body = Covering.of(1.5, fat, random);
        body.add(new Layer(fat, muscle, Weave.muscle(0.03, 7, random.of("serratus")), Covering.LOSS));
        body.add(new Layer(muscle, pleura, Weave.muscle(-0.02, 2.4, random.of("intercostal")), Covering.LOSS));
        body.add(Fascia.along(fat, -17, random));
        body.add(Fascia.along(muscle, -17, random));
        body.add(Patchiness.of(random));
        body.add(AirSurface.of(pleura, AirSurface.Air.UNDER_PLEURA, random));
        Border left = Border.through(random, -18, 19.5, -15.5, 17.0, -12.5, 16.2, -9.5, 17.0, -7, 19.5);
        Border right = Border.through(random, 6, 19.5, 8.5, 17.2, 11.5, 16.4, 14.5, 17.2, 17, 19.5);
        body.add(new Bone(left, -17.6, -7.4, new Texture(random)));
        body.add(new Bone(right, 6.4, 16.6, new Texture(random)));
        return new Anatomy(
                body,
                "serratusSuperficial",
                new ScanPoint(-11, 13.6),
                TargetKind.FASCIAL_PLANE,
                List.of(
                        Anatomy.below("left rib", Hazard.Kind.BONE, new Anatomy.Surface(left, -17.6, -7.4, 40)),
                        Anatomy.below("right rib", Hazard.Kind.BONE, new Anatomy.Surface(right, 6.4, 16.6, 40)),
                        Anatomy.below("pleura", Hazard.Kind.PLEURA, new Anatomy.Surface(pleura, -6.5, 6, 40))));
    }

    /** Nothing but scatterers of one strength: the field that speckle statistics are measured on. */
    static Anatomy phantom() {
        return new Anatomy(
                List.of(new Layer(Covering.TOP, Covering.BOTTOM, Weave.plain(-36), Covering.LOSS)),
                "none",
                new ScanPoint(0, 20),
                TargetKind.NEAR_NERVE,
                List.of());
    }
}
