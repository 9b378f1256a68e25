// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.geometry.Reason;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Intent;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** Marks that cannot be, what is doubted or missing of them, and what an observation takes over from the plan. */
class ObservationMarksTest {
    private final CaseFixture fixture = new CaseFixture();

    private Comparison compare(ObservationInput observed) {
        return Comparison.of(fixture.input(), List.of(observed));
    }

    private Observation observe(ObservationInput observed) {
        return compare(observed).observations().get(0);
    }

    private Observation observe(List<PointPx> shaft, Optional<PointPx> tip, boolean tipIsTip) {
        return observe(fixture.observed(shaft, tip, tipIsTip));
    }

    private static double value(Observation observation, ObservationQuantity quantity) {
        return ((Reading.Seen) observation.readings().of(quantity)).value();
    }

    private static void because(Reason reason, Observation observation, ObservationQuantity... quantities) {
        for (ObservationQuantity quantity : quantities) {
            assertThat(observation.readings().of(quantity)).as(quantity.field()).isEqualTo(new Reading.NotSeen(reason));
        }
    }

    private List<PointPx> shaft() {
        return List.of(fixture.at(30, 10), fixture.at(15, 20));
    }

    /** The fixture's marks on another picture, each present as told. */
    private ObservationInput elsewhere(CaseFixture frame, boolean midpoint, boolean target, boolean skin) {
        ObservationMarks marks =
                fixture.observed(shaft(), Optional.of(fixture.at(3, 26)), true).marks();
        ObservationMarks own = new ObservationMarks(
                marks.id(),
                marks.phase(),
                marks.shaft(),
                marks.tip(),
                marks.tipIsTip(),
                midpoint ? Optional.of(fixture.at(0, 0)) : Optional.empty(),
                target ? Optional.of(fixture.at(0, 30)) : Optional.empty(),
                skin ? fixture.skinMarks() : List.of(),
                OptionalDouble.empty());
        return new ObservationInput(own, frame.frame(), false);
    }

    @Test
    void whatIsTakenOverFromThePlanIsAssumedAndNothingElse() {
        fixture.intent(new Intent.EntryDistance(45));
        for (int missing = 0; missing < 8; missing++) {
            boolean midpoint = (missing & 1) == 0;
            boolean target = (missing & 2) == 0;
            boolean skin = (missing & 4) == 0;
            Observation observation = observe(elsewhere(fixture, midpoint, target, skin));
            assertThat(observation.assumptions().contains(Assumption.PROBE_NOT_MOVED))
                    .as("probeNotMoved without %s", missing)
                    .isEqualTo(missing != 0);
            assertThat(observation.assumptions().contains(Assumption.TARGET_DID_NOT_MOVE))
                    .as("targetDidNotMove without %s", missing)
                    .isEqualTo(!target);
            assertThat(value(observation, ObservationQuantity.ENTRY_DISTANCE)).isCloseTo(45, within(1e-9));
            assertThat(value(observation, ObservationQuantity.TIP_TO_TARGET)).isCloseTo(5, within(1e-9));
            assertThat(observation.assumptions())
                    .contains(Assumption.NEEDLE_IN_IMAGE_PLANE, Assumption.NEEDLE_STRAIGHT);
            assertThat(observation.assumptions()).doesNotContain(Assumption.SEEN_END_MAY_BE_SHAFT);
        }
    }

    @Test
    void anotherGeometryTakesNothingOverAndAssumesNothing() {
        CaseFixture other = new CaseFixture();
        other.rows = 1900;
        Observation observation = observe(elsewhere(other, false, false, false));
        assertThat(observation.assumptions())
                .doesNotContain(Assumption.PROBE_NOT_MOVED, Assumption.TARGET_DID_NOT_MOVE);
        because(Reason.TARGET_NOT_MARKED, observation, ObservationQuantity.TIP_TO_TARGET);
        because(Reason.SKIN_NOT_MARKED, observation, ObservationQuantity.ANGLE_TO_SKIN);
        Observation marked = observe(elsewhere(other, true, true, true));
        assertThat(value(marked, ObservationQuantity.ENTRY_DISTANCE)).isCloseTo(45, within(1e-9));
    }

    @Test
    void skinTakenOverFromTheImagesEdgeIsStillAssumed() {
        fixture.skin = false;
        assertThat(observe(elsewhere(fixture, true, true, false)).doubts()).contains(Doubt.SKIN_ASSUMED);
        assertThat(observe(elsewhere(fixture, true, true, true)).doubts()).doesNotContain(Doubt.SKIN_ASSUMED);
    }

    /** Two halves of a dual view: each mark that lies in the other one is named. */
    @Test
    void marksInAnotherRegionAreNamed() {
        CaseFixture plan = fixture;
        String[] pointers = {"/observations/0/shaft/1", "/observations/0/tip", "/observations/0/target", "/marks/target"
        };
        for (int i = 0; i < pointers.length; i++) {
            PointPx inside = new PointPx(500, 500);
            PointPx other = new PointPx(1500, 700);
            ObservationMarks marks = new ObservationMarks(
                    "obs-1",
                    Optional.empty(),
                    List.of(new PointPx(600, 400), i == 0 ? other : inside),
                    Optional.of(i == 1 ? other : inside),
                    Optional.empty(),
                    Optional.empty(),
                    i == 3 ? Optional.empty() : Optional.of(i == 2 ? other : inside),
                    List.of(),
                    OptionalDouble.empty());
            plan.targetU = 25; // column 1500
            plan.targetW = 30;
            ObservationInput input = new ObservationInput(marks, dualView(), i == 3);
            Refusal refusal = catchThrowableOfType(Refusal.class, () -> Comparison.of(plan.input(), List.of(input)));
            assertThat(refusal.problem().detail()).as(pointers[i]).contains("different regions");
            assertThat(refusal.problem().detail()).contains(pointers[i]);
        }
    }

    private FrameGeometry dualView() {
        UltrasoundRegion whole = fixture.frame().regions().get(0);
        return new FrameGeometry(
                2000,
                2000,
                List.of(half(whole, 0, 0), half(whole, 1, 1000)),
                Optional.empty(),
                Optional.empty(),
                "array-1");
    }

    private static UltrasoundRegion half(UltrasoundRegion whole, int index, int from) {
        return new UltrasoundRegion(
                new Region(index, from, 0, from + 999, 1999),
                1,
                1,
                OptionalInt.empty(),
                3,
                3,
                0.005,
                0.005,
                OptionalInt.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    @Test
    void refusesMarksThatCannotBe() {
        PointPx off = new PointPx(2001, 10);
        Optional<PointPx> none = Optional.empty();
        refusedAt(
                "/observations/0/skin",
                new Marked(none, none, none, List.of(fixture.at(0, 0)), OptionalDouble.empty()));
        refusedAt("/observations/0/tip", new Marked(Optional.of(off), none, none, List.of(), OptionalDouble.empty()));
        refusedAt(
                "/observations/0/midpoint",
                new Marked(none, Optional.of(off), none, List.of(), OptionalDouble.empty()));
        refusedAt(
                "/observations/0/target", new Marked(none, none, Optional.of(off), List.of(), OptionalDouble.empty()));
        fixture.approach = Approach.OUT_OF_PLANE;
        for (double distance : new double[] {0, -3, Double.NaN, Double.POSITIVE_INFINITY}) {
            refusedAt(
                    "/observations/0/punctureDistanceMm",
                    new Marked(none, none, none, List.of(), OptionalDouble.of(distance)));
        }
    }

    private record Marked(
            Optional<PointPx> tip,
            Optional<PointPx> midpoint,
            Optional<PointPx> target,
            List<PointPx> skin,
            OptionalDouble puncture) {}

    private void refusedAt(String pointer, Marked marked) {
        ObservationMarks marks = new ObservationMarks(
                "obs-1",
                Optional.empty(),
                List.of(),
                marked.tip,
                Optional.empty(),
                marked.midpoint,
                marked.target,
                marked.skin,
                marked.puncture);
        Refusal refusal =
                catchThrowableOfType(Refusal.class, () -> compare(new ObservationInput(marks, fixture.frame(), true)));
        assertThat(refusal).as(pointer).isNotNull();
        assertThat(refusal.problem().pointer()).isEqualTo(pointer);
    }

    @Test
    void aComparisonChecksThePlanToo() {
        fixture.footprint = OptionalDouble.of(-1);
        Refusal refusal =
                catchThrowableOfType(Refusal.class, () -> compare(fixture.observed(shaft(), Optional.empty(), false)));
        assertThat(refusal.problem().pointer()).isEqualTo("/probe/footprintMm");
    }

    @Test
    void theDeviationNamesWhatIsMissing() {
        fixture.intent(new Intent.EntryDistance(45));
        Readings<DeviationQuantity> tipUnknown = compare(fixture.observed(shaft(), Optional.empty(), false))
                .deviations()
                .get(0)
                .readings();
        for (DeviationQuantity quantity : List.of(
                DeviationQuantity.PATH,
                DeviationQuantity.TIP_DEPTH,
                DeviationQuantity.ALONG_PLAN,
                DeviationQuantity.ACROSS_PLAN)) {
            assertThat(tipUnknown.of(quantity)).isEqualTo(new Reading.NotSeen(Reason.TIP_NOT_CONFIRMED));
        }
        Readings<DeviationQuantity> otherSide = compare(fixture.observed(
                        List.of(fixture.at(-30, 10), fixture.at(-15, 20)), Optional.of(fixture.at(0, 30)), true))
                .deviations()
                .get(0)
                .readings();
        for (DeviationQuantity quantity : otherSide.measurands()) {
            assertThat(otherSide.of(quantity)).isEqualTo(new Reading.NotSeen(Reason.OTHER_SIDE));
        }
        fixture.intent = Optional.empty();
        fixture.needleLength = OptionalDouble.of(20);
        Readings<DeviationQuantity> noPlan = compare(fixture.observed(shaft(), Optional.of(fixture.at(0, 30)), true))
                .deviations()
                .get(0)
                .readings();
        for (DeviationQuantity quantity : List.of(
                DeviationQuantity.ANGLE_TO_SKIN,
                DeviationQuantity.PATH,
                DeviationQuantity.ENTRY_DISTANCE,
                DeviationQuantity.ALONG_PLAN,
                DeviationQuantity.ACROSS_PLAN)) {
            assertThat(noPlan.of(quantity)).as(quantity.field()).isEqualTo(new Reading.NotSeen(Reason.INFEASIBLE));
        }
    }

    @Test
    void aTipThreeUncertaintiesOffTheShaftIsDoubted() {
        for (double off : new double[] {0.1, 0.3, -0.3}) {
            // Perpendicular to the shaft of slope 2 : 3; u of the offset is about 0.09 mm there.
            double length = Math.hypot(2, 3);
            PointPx tip = fixture.at(12 + off * 2 / length, 22 + off * 3 / length);
            Observation observation = observe(shaft(), Optional.of(tip), true);
            assertThat(observation.doubts().contains(Doubt.TIP_OFF_SHAFT)).isEqualTo(Math.abs(off) > 0.2);
        }
    }
}
