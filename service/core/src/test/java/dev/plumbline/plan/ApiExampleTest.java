// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.needle.Needle;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.observation.Phase;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** The example document of the API, with frames of 640 x 640 at 0.059375 mm per pixel; expected values by plain trigonometry. */
class ApiExampleTest {
    private static final double PIXEL = 0.059375;
    private static final FrameGeometry FRAME = new FrameGeometry(
            640, 640, List.of(), Optional.of(new PixelSize(PIXEL, PIXEL)), Optional.empty(), "array-1");

    private static PlanInput input() {
        Probe probe = new Probe(
                Optional.of(Probe.Kind.LINEAR),
                OptionalDouble.of(38),
                Optional.of(new PointPx(320, 40)),
                Optional.of(Side.RIGHT),
                OptionalDouble.of(1),
                Optional.of(new SkinBeyondProbe.Flat()),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
        PlanMarks marks = new PlanMarks(
                new PointPx(320, 360),
                Optional.of(TargetKind.NEAR_NERVE),
                List.of(new PointPx(0, 40), new PointPx(640, 40)),
                List.of(new Nerve("median", new Shape.Disc(new PointPx(320, 400), 1.5))),
                List.of(
                        new Hazard(
                                "artery",
                                Hazard.Kind.ARTERY,
                                OptionalDouble.of(0),
                                new Shape.Disc(new PointPx(150, 260), 3)),
                        new Hazard(
                                "bone",
                                Hazard.Kind.BONE,
                                OptionalDouble.empty(),
                                new Shape.Outline(List.of(
                                        new PointPx(0, 560),
                                        new PointPx(640, 560),
                                        new PointPx(640, 639),
                                        new PointPx(0, 639))))));
        return new PlanInput(
                Approach.IN_PLANE,
                FRAME,
                probe,
                marks,
                new Needle(OptionalInt.of(22), OptionalDouble.of(50), Optional.of(true)),
                Optional.of(new Intent.EntryDistance(29)),
                Constraints.NOTHING_STATED,
                InputUncertainty.NOTHING_STATED);
    }

    private static ObservationInput observation() {
        ObservationMarks marks = new ObservationMarks(
                "obs-1",
                Optional.of(Phase.FINAL_TIP),
                List.of(new PointPx(600, 180), new PointPx(360, 336)),
                Optional.of(new PointPx(322, 360)),
                Optional.of(true),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                OptionalDouble.empty());
        return new ObservationInput(marks, FRAME, false);
    }

    private static double value(Reading reading) {
        return ((Reading.Seen) reading).value();
    }

    @Test
    void plan() {
        InPlanePlan plan = (InPlanePlan) Plan.of(input());
        assertThat(plan.feasible()).isTrue();
        assertThat(value(plan.readings().of(PlanQuantity.TARGET_DEPTH))).isCloseTo(19, within(1e-9));
        assertThat(value(plan.readings().of(PlanQuantity.ANGLE_TO_SKIN)))
                .isCloseTo(Math.toDegrees(Math.atan2(19, 29)), within(1e-9));
        assertThat(value(plan.readings().of(PlanQuantity.PATH))).isCloseTo(Math.hypot(19, 29), within(1e-9));
        assertThat(value(plan.readings().of(PlanQuantity.NEEDLE_LEFT)))
                .isCloseTo(50 - Math.hypot(19, 29), within(1e-9));
        assertThat(value(plan.readings().of(PlanQuantity.LEAD_IN)))
                .isCloseTo(10 * Math.hypot(19, 29) / 29, within(1e-9));
        assertThat(plan.clearances().nerves()).hasSize(1);
        // The disc's center lies under the target: its distance from the target is 40 px, from the path's end the same.
        assertThat(value(plan.clearances().nerves().get(0).path())).isCloseTo(40 * PIXEL - 1.5, within(1e-9));
        double length = Math.hypot(19, 29);
        double besideExtension = 40 * PIXEL * 29 / length - 1.5;
        assertThat(value(plan.clearances().nerves().get(0).overshoot())).isCloseTo(besideExtension, within(1e-9));
        assertThat(plan.clearances().hazards()).extracting(Clearance::name).containsExactly("artery", "bone");
        double boneDepth = 520 * PIXEL;
        assertThat(value(plan.clearances().hazards().get(1).path()))
                .isCloseTo(boneDepth - 19 - 5 * 19 / length, within(1e-9));
        assertThat(plan.clearances().hazards().get(1).marginLimitedByTarget()).isFalse();
        assertThat(plan.judgement().notes()).isEmpty();
        assertThat(plan.judgement().unchecked()).isEmpty();
        assertThat(plan.text()).contains("Hazards were checked only inside this frame.");
    }

    @Test
    void observationAndDeviation() {
        Comparison comparison = Comparison.of(input(), List.of(observation()));
        double angle = Math.toDegrees(Math.atan2(156, 240));
        assertThat(value(comparison.observations().get(0).readings().of(ObservationQuantity.ANGLE_TO_SKIN)))
                .isCloseTo(angle, within(1e-9));
        double entry = (600 - 320 + 140 * 240 / 156.0) * PIXEL;
        assertThat(value(comparison.observations().get(0).readings().of(ObservationQuantity.ENTRY_DISTANCE)))
                .isCloseTo(entry, within(1e-9));
        assertThat(value(comparison.deviations().get(0).readings().of(DeviationQuantity.ENTRY_DISTANCE)))
                .isCloseTo(entry - 29, within(1e-9));
        assertThat(value(comparison.deviations().get(0).readings().of(DeviationQuantity.TIP_DEPTH)))
                .isCloseTo(0, within(1e-9));
        assertThat(value(comparison.deviations().get(0).readings().of(DeviationQuantity.ALONG_PLAN)))
                .isCloseTo(-2 * PIXEL * 29 / Math.hypot(19, 29), within(1e-9));
    }
}
