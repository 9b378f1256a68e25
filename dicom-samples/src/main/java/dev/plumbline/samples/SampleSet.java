// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.geometry.Side;
import dev.plumbline.samples.SampleScene.Layout;
import dev.plumbline.samples.SampleScene.ScaleStatement;
import java.util.List;

/** The samples that a seed gives, by name. The bodies are the same in all samples of one seed. */
public final class SampleSet {
    static final double DIAMETER_22G_MM = 0.7;

    private static final Layout GREY = new Layout(800, 600, false, ScaleStatement.REGIONS);
    private static final Views.Flat WIDE = new Views.Flat(38, 475, 563, 162);
    static final double OBSERVED_DEGREES = 38.2;
    static final ScanPoint OBSERVED_TIP = new ScanPoint(0.6, 30.9);

    private static final double PLANNED_DEGREES = Math.toDegrees(StrictMath.atan2(30, 45));

    private final long seed;
    private final SampleRandom random;

    public SampleSet(long seed) {
        this.seed = seed;
        this.random = new SampleRandom(seed);
    }

    public long seed() {
        return seed;
    }

    /** The pictures of a sample of this set. */
    public List<SampleFrame> render(Sample sample) {
        return sample.scene().render(random.of("picture " + sample.name()));
    }

    public List<Sample> all() {
        OtherSamples others = new OtherSamples(random);
        return List.of(
                inPlanePlan(),
                inPlaneNeedle(),
                inPlaneAfterSpread(),
                outOfPlanePlan(),
                outOfPlaneNeedle(),
                nearPartOfShaft(),
                partOfShaft(
                        "middle-of-shaft",
                        "Only the middle: the needle crosses the beam.",
                        InPlaneNeedle.Seen.MIDDLE_PART),
                partOfShaft("far-part-of-shaft", "Only the far part with the tip.", InPlaneNeedle.Seen.FAR_PART),
                partOfShaft(
                        "needle-not-seen",
                        "The needle is in the body, nothing of it in the beam.",
                        InPlaneNeedle.Seen.NOTHING),
                others.steepNeedle(popliteal()),
                others.shallowNeedle(),
                others.curvedPlan(),
                others.curvedNeedle(),
                others.fascialPlane(),
                others.chestWall(),
                others.veinPressed(),
                others.colourFlow(),
                others.anisotropicPixels(),
                others.pixelSpacingOnly(),
                others.withoutScale(),
                others.singleLook(),
                others.needleAdvances(),
                others.probeSlides(),
                others.dotFollowsDown());
    }

    public Sample named(String name) {
        return all().stream()
                .filter(sample -> sample.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("No sample is called " + name + "."));
    }

    /** A path of 33.69 degrees from 45 mm is meant, to a target 30 mm deep under the middle of a 38 mm face. */
    public Sample inPlanePlan() {
        return new Sample(
                "in-plane-plan",
                Sample.Chapter.IN_PLANE,
                "Sciatic nerve above the knee, cut across, before the puncture; linear probe.",
                still(GREY, popliteal()));
    }

    /** The needle of {@link #inPlanePlan} as it went in: 4.5 degrees steeper. */
    public Sample inPlaneNeedle() {
        return new Sample(
                "in-plane-needle",
                Sample.Chapter.IN_PLANE,
                "The same with the needle from the right, 38.2 degrees to the skin, tip beside the nerve.",
                still(GREY, popliteal().with(shaft(OBSERVED_DEGREES, OBSERVED_TIP, InPlaneNeedle.Seen.WHOLE))));
    }

    /** The needle of {@link #inPlaneNeedle} still in place after the injection. */
    public Sample inPlaneAfterSpread() {
        NerveBundle.Oval round = LimbAnatomies.SCIATIC.grown(0.25);
        Anatomy wet = popliteal().anatomy().with(new Fluid(round, 2.5, OBSERVED_TIP));
        return new Sample(
                "in-plane-after-spread",
                Sample.Chapter.IN_PLANE,
                "The same after the injection: fluid round the nerve, needle still in place.",
                still(
                        GREY,
                        popliteal().with(wet).with(shaft(OBSERVED_DEGREES, OBSERVED_TIP, InPlaneNeedle.Seen.WHOLE))));
    }

    public Sample outOfPlanePlan() {
        return new Sample(
                "out-of-plane-plan",
                Sample.Chapter.OUT_OF_PLANE,
                "Femoral nerve under the iliac fascia beside the artery, before the puncture; linear probe.",
                still(GREY, femoral()));
    }

    /** Puncture 20 mm from the plane; the needle crosses it 0.7 mm deeper than the target. */
    public Sample outOfPlaneNeedle() {
        CrossingNeedle needle = new CrossingNeedle(new ScanPoint(-3.7, 20.7), 20, DIAMETER_22G_MM);
        return new Sample(
                "out-of-plane-needle",
                Sample.Chapter.OUT_OF_PLANE,
                "The same with a needle crossing the plane: a dot and its tail, nothing else.",
                still(GREY, femoral().with(needle)));
    }

    public Sample nearPartOfShaft() {
        return partOfShaft("near-part-of-shaft", "Only the near part of the shaft.", InPlaneNeedle.Seen.NEAR_PART);
    }

    private Sample partOfShaft(String name, String shows, InPlaneNeedle.Seen seen) {
        InPlaneNeedle needle = shaft(PLANNED_DEGREES, new ScanPoint(0, 30), seen);
        return new Sample(
                name,
                Sample.Chapter.SHAFT_IN_PART,
                shows,
                still(GREY, popliteal().with(needle)));
    }

    static InPlaneNeedle shaft(double degrees, ScanPoint tip, InPlaneNeedle.Seen seen) {
        return new InPlaneNeedle(tip, degrees, Side.RIGHT, seen, DIAMETER_22G_MM);
    }

    static SampleScene still(Layout layout, SamplePane... panes) {
        return new SampleScene(layout, List.of(panes), Motion.STILL);
    }

    private SamplePane popliteal() {
        return WIDE.of(LimbAnatomies.popliteal(random.of("popliteal")), Scanner.high(28));
    }

    private SamplePane femoral() {
        return new Views.Flat(38, 608, 560, 96).of(LimbAnatomies.femoral(random.of("femoral")), Scanner.high(20));
    }
}
