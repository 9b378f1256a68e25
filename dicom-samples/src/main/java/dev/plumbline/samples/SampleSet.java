// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.Side;
import java.util.List;
import java.util.Optional;

/** The samples that a seed gives, by name. */
public final class SampleSet {
    private static final double DIAMETER_22G_MM = 0.7;

    private final SampleRandom random;

    public SampleSet(long seed) {
        this.random = new SampleRandom(seed);
    }

    public List<Sample> all() {
        return List.of(inPlanePlan(), inPlaneNeedle(), outOfPlanePlan(), outOfPlaneNeedle());
    }

    /** The stream that the pictures of a sample are drawn from. */
    public SampleRandom randomOf(Sample sample) {
        return random.of("picture " + sample.name());
    }

    public Sample inPlanePlan() {
        return new Sample("in-plane-plan", "Sciatic nerve above the knee, before the puncture.", still(popliteal()));
    }

    public Sample inPlaneNeedle() {
        InPlaneNeedle needle = new InPlaneNeedle(
                new ScanPoint(0.6, 30.9), 38.2, Side.RIGHT, InPlaneNeedle.Seen.WHOLE, DIAMETER_22G_MM);
        return new Sample(
                "in-plane-needle",
                "The same with a needle from the right, 38.2 degrees to the skin.",
                still(popliteal().with(needle)));
    }

    public Sample outOfPlanePlan() {
        return new Sample(
                "out-of-plane-plan", "Femoral nerve beside the artery, before the puncture.", still(femoral()));
    }

    public Sample outOfPlaneNeedle() {
        CrossingNeedle needle = new CrossingNeedle(new ScanPoint(-3.7, 20.7), 20, DIAMETER_22G_MM);
        return new Sample(
                "out-of-plane-needle",
                "The same with a needle crossing the plane: a dot and its tail.",
                still(femoral().with(needle)));
    }

    private SamplePane popliteal() {
        ImageArea area =
                new ImageArea(new Region(0, 162, 26, 636, 588), new PixelSize(0.08, 0.08), new ScanPoint(-19, 0));
        SamplePane.Machine machine =
                new SamplePane.Machine(new Transducer.Linear(38), Scanner.high(28), "LINEAR 38 MM  DEPTH 4.5 CM");
        return new SamplePane(area, machine, Anatomies.popliteal(random.of("popliteal")), Optional.empty());
    }

    private SamplePane femoral() {
        ImageArea area =
                new ImageArea(new Region(0, 96, 26, 703, 585), new PixelSize(0.0625, 0.0625), new ScanPoint(-19, 0));
        SamplePane.Machine machine =
                new SamplePane.Machine(new Transducer.Linear(38), Scanner.high(20), "LINEAR 38 MM  DEPTH 3.5 CM");
        return new SamplePane(area, machine, Anatomies.femoral(random.of("femoral")), Optional.empty());
    }

    private static SampleScene still(SamplePane pane) {
        return new SampleScene(
                "SAMPLE", 800, 600, false, SampleScene.ScaleStatement.REGIONS, List.of(pane), Motion.STILL);
    }
}
