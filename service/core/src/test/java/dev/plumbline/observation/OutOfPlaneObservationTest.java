// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Reason;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Intent;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The bright dot of a needle that crosses the image: what it gives with and without tip, skin and puncture distance. */
class OutOfPlaneObservationTest {
    private final CaseFixture fixture = new CaseFixture();
    private Optional<PointPx> dot = Optional.of(fixture.at(3, 26));
    private boolean tipIsTip = true;
    private OptionalDouble puncture = OptionalDouble.of(26);

    @BeforeEach
    void acrossTheImage() {
        fixture.approach = Approach.OUT_OF_PLANE;
        fixture.intent(new Intent.PunctureDistance(20));
    }

    private ObservationMarks marks() {
        return new ObservationMarks(
                "obs-1",
                Optional.of(Phase.PRACTICE),
                List.of(),
                dot,
                Optional.of(tipIsTip),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                puncture);
    }

    private Comparison compare() {
        return Comparison.of(fixture.input(), List.of(new ObservationInput(marks(), fixture.frame(), true)));
    }

    private Observation observe() {
        return compare().observations().get(0);
    }

    private static double value(Observation observation, ObservationQuantity quantity) {
        return ((Reading.Seen) observation.readings().of(quantity)).value();
    }

    private static void because(Reason reason, Observation observation, ObservationQuantity... quantities) {
        for (ObservationQuantity quantity : quantities) {
            assertThat(observation.readings().of(quantity)).as(quantity.field()).isEqualTo(new Reading.NotSeen(reason));
        }
    }

    @Test
    void aConfirmedTipGivesEverything() {
        Observation observation = observe();
        assertThat(value(observation, ObservationQuantity.CROSSING_DEPTH)).isCloseTo(26, within(1e-9));
        assertThat(value(observation, ObservationQuantity.TIP_DEPTH)).isCloseTo(26, within(1e-9));
        assertThat(value(observation, ObservationQuantity.PUNCTURE_DISTANCE)).isCloseTo(26, within(1e-9));
        assertThat(value(observation, ObservationQuantity.ANGLE_TO_SKIN)).isCloseTo(45, within(1e-9));
        assertThat(value(observation, ObservationQuantity.PATH)).isCloseTo(26 * Math.sqrt(2), within(1e-9));
        assertThat(value(observation, ObservationQuantity.TIP_TO_TARGET)).isCloseTo(5, within(1e-9));
        assertThat(observation.phase()).contains(Phase.PRACTICE);
        assertThat(observation.phase().orElseThrow().word()).isEqualTo("practice");
        assertThat(observation.assumptions())
                .containsExactly(
                        Assumption.NEEDLE_STRAIGHT,
                        Assumption.BEAM_PERPENDICULAR_TO_SKIN,
                        Assumption.TARGET_DID_NOT_MOVE);
        assertThat(observation.doubts()).isEmpty();
    }

    @Test
    void anUnconfirmedTipIsACrossing() {
        tipIsTip = false;
        Observation observation = observe();
        assertThat(value(observation, ObservationQuantity.CROSSING_DEPTH)).isCloseTo(26, within(1e-9));
        assertThat(value(observation, ObservationQuantity.ANGLE_TO_SKIN)).isCloseTo(45, within(1e-9));
        because(
                Reason.TIP_NOT_CONFIRMED,
                observation,
                ObservationQuantity.TIP_DEPTH,
                ObservationQuantity.PATH,
                ObservationQuantity.TIP_TO_TARGET);
        assertThat(observation.assumptions()).contains(Assumption.SEEN_END_MAY_BE_SHAFT);
    }

    @Test
    void withoutAPunctureDistanceThereIsNoAngle() {
        puncture = OptionalDouble.empty();
        because(
                Reason.NOT_MARKED,
                observe(),
                ObservationQuantity.PUNCTURE_DISTANCE,
                ObservationQuantity.ANGLE_TO_SKIN,
                ObservationQuantity.PATH);
        tipIsTip = false;
        because(Reason.TIP_NOT_CONFIRMED, observe(), ObservationQuantity.PATH);
    }

    @Test
    void withoutADotOnlyThePunctureIsKnown() {
        dot = Optional.empty();
        Observation observation = observe();
        assertThat(value(observation, ObservationQuantity.PUNCTURE_DISTANCE)).isCloseTo(26, within(1e-9));
        because(Reason.NOT_MARKED, observation, ObservationQuantity.CROSSING_DEPTH, ObservationQuantity.ANGLE_TO_SKIN);
        because(Reason.TIP_NOT_CONFIRMED, observation, ObservationQuantity.PATH, ObservationQuantity.TIP_DEPTH);
    }

    @Test
    void withoutSkinADotHasNoDepth() {
        fixture.skin = false;
        fixture.kind = Optional.empty();
        Observation observation = observe();
        because(
                Reason.SKIN_NOT_MARKED,
                observation,
                ObservationQuantity.CROSSING_DEPTH,
                ObservationQuantity.ANGLE_TO_SKIN,
                ObservationQuantity.PATH,
                ObservationQuantity.TIP_DEPTH);
        assertThat(value(observation, ObservationQuantity.TIP_TO_TARGET)).isCloseTo(5, within(1e-9));
        tipIsTip = false;
        because(Reason.TIP_NOT_CONFIRMED, observe(), ObservationQuantity.PATH);
    }

    @Test
    void onAPictureOfOtherGeometryTheTargetHasToBeMarked() {
        CaseFixture other = new CaseFixture();
        other.rows = 1900;
        Observation observation = Comparison.of(
                        fixture.input(), List.of(new ObservationInput(marks(), other.frame(), false)))
                .observations()
                .get(0);
        because(Reason.TARGET_NOT_MARKED, observation, ObservationQuantity.TIP_TO_TARGET);
        because(Reason.SKIN_NOT_MARKED, observation, ObservationQuantity.CROSSING_DEPTH);
        assertThat(observation.carriedPlan()).isEmpty();
    }

    @Test
    void onAnotherPictureOfEqualGeometryThePlanIsAtItsTarget() {
        Observation observation = Comparison.of(
                        fixture.input(), List.of(new ObservationInput(marks(), fixture.frame(), false)))
                .observations()
                .get(0);
        Observation.CarriedPlan carried = observation.carriedPlan().orElseThrow();
        assertThat(carried.target().distanceTo(fixture.at(0, 30))).isLessThan(1e-6);
        assertThat(carried.entry()).isEqualTo(carried.target());
        assertThat(observation.assumptions()).contains(Assumption.PROBE_NOT_MOVED, Assumption.TARGET_DID_NOT_MOVE);
    }

    @Test
    void theDeviationIsObservedMinusPlanned() {
        Comparison comparison = compare();
        double[] expected = {45 - Math.toDegrees(Math.atan2(30, 20)), 6, -4, 26 * Math.sqrt(2) - Math.hypot(20, 30), -4
        };
        DeviationQuantity[] quantities = {
            DeviationQuantity.ANGLE_TO_SKIN,
            DeviationQuantity.PUNCTURE_DISTANCE,
            DeviationQuantity.CROSSING_DEPTH,
            DeviationQuantity.PATH,
            DeviationQuantity.TIP_DEPTH
        };
        for (int i = 0; i < expected.length; i++) {
            Reading.Seen seen =
                    (Reading.Seen) comparison.deviations().get(0).readings().of(quantities[i]);
            assertThat(seen.value()).as(quantities[i].field()).isCloseTo(expected[i], within(1e-9));
        }
        assertThat(comparison.deviations().get(0).readings().measurands()).hasSize(5);
    }
}
