// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanQuantity;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class UncertaintyTest {
    private final CaseFixture fixture = new CaseFixture();

    private static double u(Reading reading) {
        return ((Reading.Seen) reading).standardUncertainty();
    }

    private static InputUncertainty stated(double markPx, double scale) {
        return new InputUncertainty(OptionalDouble.of(markPx), OptionalDouble.of(scale), Optional.empty());
    }

    /** FACTS 8.6: 10 mm of shaft, 0.5 mm per mark: standard 4.05, expanded 8.1 degrees. */
    @Test
    void aShortShaftIsUncertain() {
        fixture.uncertainty = stated(10, 0);
        fixture.intent(new Intent.AngleToSkin(30));
        Comparison comparison = Comparison.of(
                fixture.input(),
                List.of(fixture.observed(List.of(fixture.at(10, 10), fixture.at(2, 16)), Optional.empty(), false)));
        Reading.Seen angle =
                (Reading.Seen) comparison.observations().get(0).readings().of(ObservationQuantity.ANGLE_TO_SKIN);
        double shaft = Math.toDegrees(Math.sqrt(2) * 0.5 / 10);
        // The skin line's two marks, 100 mm apart, add a little.
        double skin = Math.toDegrees(Math.sqrt(2) * 0.5 / 100);
        assertThat(shaft).isCloseTo(4.05, within(0.005));
        assertThat(angle.standardUncertainty()).isCloseTo(Math.hypot(shaft, skin), within(1e-9));
        assertThat(angle.expandedUncertainty()).isEqualTo(2 * angle.standardUncertainty());
    }

    @Test
    void decisionsAreExact() {
        fixture.intent(new Intent.EntryDistance(45));
        Plan entry = Plan.of(fixture.input());
        assertThat(u(entry.readings().of(PlanQuantity.ENTRY_DISTANCE))).isZero();
        assertThat(u(entry.readings().of(PlanQuantity.ANGLE_TO_SKIN))).isPositive();
        fixture.intent(new Intent.AngleToSkin(30));
        Plan angle = Plan.of(fixture.input());
        assertThat(u(angle.readings().of(PlanQuantity.ANGLE_TO_SKIN))).isZero();
        assertThat(u(angle.readings().of(PlanQuantity.ENTRY_DISTANCE))).isPositive();
    }

    /** A scale error common to both frames cancels in the difference of two equal lengths, an independent one does not. */
    @Test
    void framesOfOneTransducerShareTheirScaleError() {
        fixture.uncertainty = stated(1e-6, 0.02);
        fixture.intent(new Intent.EntryDistance(45));
        double shared = depthDifference("array-1");
        double independent = depthDifference("array-2");
        assertThat(shared).isLessThan(1e-4);
        assertThat(independent).isCloseTo(Math.sqrt(2) * 0.02 * 30, within(1e-4));
    }

    private double depthDifference(String equipment) {
        CaseFixture other = new CaseFixture();
        other.equipment = equipment;
        ObservationInput same =
                other.observed(List.of(other.at(30, 10), other.at(15, 20)), Optional.of(other.at(0, 30)), true);
        Comparison comparison =
                Comparison.of(fixture.input(), List.of(new ObservationInput(same.marks(), other.frame(), false)));
        return u(comparison.deviations().get(0).readings().of(DeviationQuantity.TIP_DEPTH));
    }

    /** {@code u = max(mm, percent d) / sqrt 3} on the axis, d the longest extent that was marked on it. */
    @Test
    void aScannersToleranceReplacesTheScaleUncertainty() {
        fixture.intent(new Intent.EntryDistance(45));
        fixture.uncertainty = new InputUncertainty(
                OptionalDouble.of(1e-6),
                OptionalDouble.empty(),
                Optional.of(new InputUncertainty.ScannerTolerance(1.5, 1.5)));
        double depth = u(Plan.of(fixture.input()).readings().of(PlanQuantity.TARGET_DEPTH));
        assertThat(depth).isCloseTo(1.5 / Math.sqrt(3), within(1e-6));
        fixture.uncertainty = new InputUncertainty(
                OptionalDouble.of(1e-6),
                OptionalDouble.empty(),
                Optional.of(new InputUncertainty.ScannerTolerance(0.1, 4)));
        double percent = u(Plan.of(fixture.input()).readings().of(PlanQuantity.TARGET_DEPTH));
        assertThat(percent).isCloseTo(0.04 * 30 / Math.sqrt(3), within(1e-6));
    }

    @Test
    void aDistanceOfZeroHasTheUncertaintyOfItsLargerPart() {
        GradientInputs inputs = new GradientInputs();
        Gradient across = inputs.uncertain(0, 0.3);
        Gradient down = inputs.uncertain(0, 0.4);
        assertThat(across.hypot(down).norm()).isEqualTo(0.4);
        assertThat(down.hypot(across).norm()).isEqualTo(0.4);
    }
}
