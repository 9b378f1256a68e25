// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.SpeedOfSound;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A speed of sound other than the scanner's, stated by a person. Source of the values: time of flight, {@code tan(shown) =
 * (1540 / c) tan(true)}, recomputed; GEOMETRY 7.
 */
class SpeedOfSoundTest {
    private static final double HALF_LAST_DIGIT = 5e-5;

    private final CaseFixture fixture = new CaseFixture();

    private Comparison compare() {
        double shown = fixture.targetW / 30;
        return Comparison.of(
                fixture.input(),
                List.of(fixture.observed(
                        List.of(fixture.at(20, 10 * shown), fixture.at(10, 20 * shown)),
                        Optional.of(fixture.at(0, 30 * shown)),
                        true)));
    }

    /** What a scanner shows of a target 30 mm deep, and of paths at 45 and 33.690 degrees. */
    @ParameterizedTest
    @CsvSource({
        "1450, 31.8621, 46.7241, 35.3002",
        "1480, 31.2162, 46.1382, 34.7488",
        "1540, 30.0000, 45.0000, 33.6901",
        "1580, 29.2405, 44.2655, 33.0154",
        "1600, 28.8750, 43.9053, 32.6869"
    })
    void isUndoneOnDepthsAlone(double speed, double shownDepth, double shown45, double shown33) {
        PixelSize pixel = new PixelSize(0.05, 0.06);
        PixelSize undone = SpeedOfSound.applied(
                        OptionalDouble.of(speed),
                        new Calibration(
                                Calibration.Source.STATED,
                                pixel,
                                Optional.empty(),
                                Optional.empty(),
                                List.of("stated")))
                .pixel();
        assertThat(undone.mmPerColumn()).isEqualTo(0.05);
        double share = undone.mmPerRow() / 0.06;
        assertThat(30 / share).isCloseTo(shownDepth, within(HALF_LAST_DIGIT));
        assertThat(Math.toDegrees(Math.atan(1 / share))).isCloseTo(shown45, within(HALF_LAST_DIGIT));
        assertThat(Math.toDegrees(Math.atan(2.0 / 3 / share))).isCloseTo(shown33, within(HALF_LAST_DIGIT));
    }

    @Test
    void runsThroughPlanObservationAndDeviation() {
        fixture.speedOfSound = OptionalDouble.of(1450);
        fixture.targetW = 30 * 1540 / 1450.0;
        fixture.intent(new Intent.EntryDistance(30));
        Comparison comparison = compare();
        assertThat(((Reading.Seen) comparison.plan().readings().of(PlanQuantity.TARGET_DEPTH)).value())
                .isCloseTo(30, within(1e-9));
        assertThat(((Reading.Seen) comparison.plan().readings().of(PlanQuantity.ANGLE_TO_SKIN)).value())
                .isCloseTo(45, within(1e-9));
        Reading angle = comparison.observations().get(0).readings().of(ObservationQuantity.ANGLE_TO_SKIN);
        assertThat(((Reading.Seen) angle).value()).isCloseTo(45, within(1e-9));
        for (DeviationQuantity quantity :
                comparison.deviations().get(0).readings().measurands()) {
            Reading reading = comparison.deviations().get(0).readings().of(quantity);
            assertThat(((Reading.Seen) reading).value()).as(quantity.field()).isCloseTo(0, within(1e-8));
        }
        assertThat(comparison.plan().judgement().assumptions()).contains(Assumption.SPEED_OF_SOUND_STATED);
        assertThat(comparison.observations().get(0).assumptions()).contains(Assumption.SPEED_OF_SOUND_STATED);
        assertThat(comparison.plan().text())
                .contains("Depths are 94.2 % of those the scanner shows: you stated a speed of sound of 1450 m/s");
        // The entry is drawn where the skin is on the picture.
        assertThat(comparison.observations().get(0).entry().orElseThrow().distanceTo(fixture.at(30, 0)))
                .isLessThan(1e-6);
    }

    @Test
    void runsThroughAPlanAcrossTheImagePlane() {
        fixture.approach = Approach.OUT_OF_PLANE;
        fixture.speedOfSound = OptionalDouble.of(1600);
        fixture.targetW = 28.875;
        Plan plan = Plan.of(fixture.input());
        assertThat(((Reading.Seen) plan.readings().of(PlanQuantity.TARGET_DEPTH)).value())
                .isCloseTo(30, within(1e-9));
        assertThat(plan.judgement().assumptions()).contains(Assumption.SPEED_OF_SOUND_STATED);
        assertThat(plan.text()).contains("a speed of sound of 1600 m/s");
    }

    @Test
    void isNeverAppliedUnasked() {
        fixture.intent(new Intent.EntryDistance(45));
        Comparison plain = compare();
        assertThat(plain.plan().judgement().assumptions()).doesNotContain(Assumption.SPEED_OF_SOUND_STATED);
        assertThat(plain.observations().get(0).assumptions()).doesNotContain(Assumption.SPEED_OF_SOUND_STATED);
        assertThat(plain.plan().text()).doesNotContain("speed of sound");
        fixture.speedOfSound = OptionalDouble.of(1540);
        assertThat(compare().plan().readings()).isEqualTo(plain.plan().readings());
    }

    @Test
    void isRefusedWhereItCannotBeUndone() {
        fixture.speedOfSound = OptionalDouble.of(1480);
        for (Optional<Probe.Kind> kind : List.of(Optional.of(Probe.Kind.CURVED), Optional.<Probe.Kind>empty())) {
            fixture.kind = kind;
            refused();
        }
        fixture.kind = Optional.of(Probe.Kind.LINEAR);
        for (double speed : new double[] {1399, 1701, 0, -1540, Double.NaN, Double.POSITIVE_INFINITY}) {
            fixture.speedOfSound = OptionalDouble.of(speed);
            refused();
        }
        for (double speed : new double[] {1400, 1700}) {
            fixture.speedOfSound = OptionalDouble.of(speed);
            assertThat(Plan.of(fixture.input()).readings()).isNotNull();
        }
    }

    private void refused() {
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> Plan.of(fixture.input()));
        assertThat(refusal.problem().pointer()).isEqualTo("/probe/speedOfSoundMPerS");
    }
}
