// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.Side;
import dev.plumbline.samples.SampleScene.Layout;
import dev.plumbline.samples.SampleScene.ScaleStatement;
import java.util.List;

/** The samples beside the two main stories: other probes, bodies, needles, scales and encodings, and the cines. */
final class OtherSamples {
    private static final Layout GREY = new Layout(800, 600, false, ScaleStatement.REGIONS);
    private static final Layout SMALL = new Layout(640, 480, false, ScaleStatement.REGIONS);
    private static final Layout COLOUR = new Layout(800, 600, true, ScaleStatement.REGIONS);
    private static final Views.Flat SMALL_VIEW = new Views.Flat(38, 380, 430, 120);
    private static final Views.Flat NARROW_VIEW = new Views.Flat(25, 500, 540, 150);
    private static final Transducer.Curved CONVEX = new Transducer.Curved(60, 60);

    private final SampleRandom random;

    OtherSamples(SampleRandom random) {
        this.random = random;
    }

    Sample steepNeedle(SamplePane popliteal) {
        InPlaneNeedle needle = SampleSet.shaft(58, new ScanPoint(0.4, 30.2), InPlaneNeedle.Seen.WHOLE);
        return new Sample(
                "steep-needle",
                Sample.Chapter.OTHER_BODIES,
                "Needle at 58 degrees to the skin: a pale shaft, a bright tip.",
                SampleSet.still(GREY, popliteal.with(needle)));
    }

    Sample shallowNeedle() {
        InPlaneNeedle needle =
                new InPlaneNeedle(new ScanPoint(2.2, 12.2), 18, Side.RIGHT, InPlaneNeedle.Seen.WHOLE, 0.6);
        return new Sample(
                "shallow-needle",
                Sample.Chapter.OTHER_BODIES,
                "Median nerve in the forearm, needle at 18 degrees: bright shaft, strong repetitions.",
                SampleSet.still(
                        GREY, NARROW_VIEW.of(forearm(), Scanner.highest(12)).with(needle)));
    }

    Sample curvedPlan() {
        return new Sample(
                "curved-plan",
                Sample.Chapter.OTHER_BODIES,
                "Sciatic nerve deep in the buttock between two bones; curved probe.",
                SampleSet.still(GREY, gluteal()));
    }

    Sample curvedNeedle() {
        InPlaneNeedle needle =
                new InPlaneNeedle(new ScanPoint(4.6, 57.2), 50, Side.RIGHT, InPlaneNeedle.Seen.WHOLE, 0.9);
        return new Sample(
                "curved-needle",
                Sample.Chapter.OTHER_BODIES,
                "The same with a needle from the right, 50 degrees to the skin.",
                SampleSet.still(GREY, gluteal().with(needle)));
    }

    Sample fascialPlane() {
        InPlaneNeedle needle =
                new InPlaneNeedle(new ScanPoint(-3.0, 25.5), 27, Side.RIGHT, InPlaneNeedle.Seen.WHOLE, 0.7);
        Anatomy wall = TrunkAnatomies.abdominalWall(random.of("abdominal wall"));
        return new Sample(
                "fascial-plane-needle",
                Sample.Chapter.OTHER_BODIES,
                "Three muscles of the belly wall over bowel, needle in the plane above the third.",
                SampleSet.still(
                        GREY,
                        new Views.Flat(44, 590, 560, 105)
                                .of(wall, Scanner.high(25))
                                .with(needle)));
    }

    Sample chestWall() {
        Anatomy wall = TrunkAnatomies.chestWall(random.of("chest wall"));
        return new Sample(
                "chest-wall-plan",
                Sample.Chapter.OTHER_BODIES,
                "Two ribs with shadows, the pleural line and its repetition below.",
                SampleSet.still(GREY, new Views.Flat(38, 560, 560, 120).of(wall, Scanner.high(18))));
    }

    Sample veinPressed() {
        Views.Flat left = new Views.Flat(38, 340, 420, 40);
        Views.Flat right = new Views.Flat(38, 340, 420, 420);
        Scanner scanner = Scanner.high(20);
        return new Sample(
                "dual-view-vein-pressed",
                Sample.Chapter.SCALES,
                "Two views side by side, each with a region of its own: the vein open, and pressed flat.",
                SampleSet.still(
                        GREY,
                        left.of(LimbAnatomies.femoral(random.of("femoral")), scanner),
                        right.of(LimbAnatomies.femoral(0.22, random.of("femoral")), scanner)));
    }

    Sample colourFlow() {
        List<ColourFlow.Stream> streams = List.of(
                new ColourFlow.Stream(new Vessel(new ScanPoint(6.6, 18.6), 3.7, 3.5, Vessel.Wall.ARTERY), true),
                new ColourFlow.Stream(new Vessel(new ScanPoint(14.6, 20.4), 4.1, 2.8, Vessel.Wall.VEIN), false));
        ColourFlow flow = new ColourFlow(new Region(1, 410, 180, 700, 480), streams, new Texture(random.of("flow")));
        SamplePane pane = new Views.Flat(38, 608, 560, 96)
                .of(LimbAnatomies.femoral(random.of("femoral")), Scanner.high(20))
                .with(flow);
        return new Sample(
                "colour-doppler",
                Sample.Chapter.SCALES,
                "RGB: colour Doppler over artery and vein, its box a second region.",
                SampleSet.still(COLOUR, pane));
    }

    Sample anisotropicPixels() {
        InPlaneNeedle needle =
                new InPlaneNeedle(new ScanPoint(2.4, 12.4), 30, Side.RIGHT, InPlaneNeedle.Seen.WHOLE, 0.6);
        return new Sample(
                "anisotropic-pixels",
                Sample.Chapter.SCALES,
                "Pixels 0.05 mm wide and 0.04 mm high: 30 degrees look like 36.",
                SampleSet.still(
                        GREY,
                        NARROW_VIEW.of(forearm(), Scanner.highest(12), 0.04).with(needle)));
    }

    Sample pixelSpacingOnly() {
        Layout spacing = new Layout(640, 480, false, ScaleStatement.PIXEL_SPACING);
        return new Sample(
                "pixel-spacing-only",
                Sample.Chapter.SCALES,
                "No ultrasound regions; the scale stands in Pixel Spacing.",
                SampleSet.still(spacing, smallPopliteal(Scanner.high(28)).with(plannedNeedle())));
    }

    Sample withoutScale() {
        Layout none = new Layout(640, 480, true, ScaleStatement.NONE);
        return new Sample(
                "without-scale",
                Sample.Chapter.SCALES,
                "RGB, nothing tells how large a pixel is; only the ruler on the screen does.",
                SampleSet.still(none, smallPopliteal(Scanner.high(28)).with(plannedNeedle())));
    }

    Sample singleLook() {
        return new Sample(
                "single-look-speckle",
                Sample.Chapter.SCALES,
                "One look instead of three: full speckle, as machines without compounding show it.",
                SampleSet.still(
                        SMALL, smallPopliteal(Scanner.high(28).withLooks(1)).with(plannedNeedle())));
    }

    Sample needleAdvances() {
        Motion motion = new Motion(24, 26, Motion.Drift.NONE, 0.97);
        return new Sample(
                "cine-needle-advances",
                Sample.Chapter.CINES,
                "Cine of two seconds: the needle comes in along its path, probe still.",
                new SampleScene(SMALL, List.of(smallPopliteal(Scanner.high(28)).with(plannedNeedle())), motion));
    }

    Sample probeSlides() {
        Motion motion = new Motion(24, 3, new Motion.Drift(3.2, 0.35, 0.8), 0.96);
        return new Sample(
                "cine-probe-slides",
                Sample.Chapter.CINES,
                "Cine of two seconds: the probe slides and turns, and the shaft is lost from its far end.",
                new SampleScene(SMALL, List.of(smallPopliteal(Scanner.high(28)).with(plannedNeedle())), motion));
    }

    Sample dotFollowsDown() {
        CrossingNeedle needle = new CrossingNeedle(new ScanPoint(-3.7, 20.7), 20, SampleSet.DIAMETER_22G_MM);
        SamplePane pane = new Views.Flat(38, 420, 420, 110)
                .of(LimbAnatomies.femoral(random.of("femoral")), Scanner.high(20))
                .with(needle);
        return new Sample(
                "cine-dot-goes-deeper",
                Sample.Chapter.CINES,
                "Cine of two seconds: the dot of a crossing needle goes deeper step by step.",
                new SampleScene(SMALL, List.of(pane), new Motion(24, 12, Motion.Drift.NONE, 0.97)));
    }

    private static InPlaneNeedle plannedNeedle() {
        return SampleSet.shaft(36, new ScanPoint(0.2, 30.2), InPlaneNeedle.Seen.WHOLE);
    }

    private SamplePane smallPopliteal(Scanner scanner) {
        return SMALL_VIEW.of(LimbAnatomies.popliteal(random.of("popliteal")), scanner);
    }

    private Anatomy forearm() {
        return LimbAnatomies.forearm(random.of("forearm"));
    }

    private SamplePane gluteal() {
        return Views.curved(CONVEX, LimbAnatomies.gluteal(random.of("gluteal")), Scanner.low(60));
    }
}
