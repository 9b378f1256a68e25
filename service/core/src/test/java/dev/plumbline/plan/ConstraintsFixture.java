// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.plan.Constraints.Band;
import dev.plumbline.plan.Constraints.Preference;
import java.util.Optional;
import java.util.OptionalDouble;

/** Constraints with only what a test states. */
public final class ConstraintsFixture {
    private Optional<Band> band = Optional.empty();
    private OptionalDouble footprintClearance = OptionalDouble.empty();
    private Optional<Boolean> atEdge = Optional.empty();
    private OptionalDouble reserve = OptionalDouble.empty();
    private OptionalDouble caution = OptionalDouble.empty();
    private OptionalDouble overshoot = OptionalDouble.empty();
    private OptionalDouble leadInMax = OptionalDouble.empty();
    private OptionalDouble heelInMax = OptionalDouble.empty();
    private Optional<Preference> prefer = Optional.empty();
    private OptionalDouble outOfPlaneAngle = OptionalDouble.empty();
    private OptionalDouble maxPuncture = OptionalDouble.empty();
    private OptionalDouble steepPuncture = OptionalDouble.empty();

    public ConstraintsFixture band(Band value) {
        band = Optional.of(value);
        return this;
    }

    public ConstraintsFixture footprintClearance(double mm) {
        footprintClearance = OptionalDouble.of(mm);
        return this;
    }

    public ConstraintsFixture atEdge() {
        atEdge = Optional.of(true);
        return this;
    }

    public ConstraintsFixture reserve(double mm) {
        reserve = OptionalDouble.of(mm);
        return this;
    }

    public ConstraintsFixture caution(double mm) {
        caution = OptionalDouble.of(mm);
        return this;
    }

    public ConstraintsFixture overshoot(double mm) {
        overshoot = OptionalDouble.of(mm);
        return this;
    }

    public ConstraintsFixture leadInMax(double mm) {
        leadInMax = OptionalDouble.of(mm);
        return this;
    }

    public ConstraintsFixture heelInMax(double degrees) {
        heelInMax = OptionalDouble.of(degrees);
        return this;
    }

    public ConstraintsFixture prefer(Preference value) {
        prefer = Optional.of(value);
        return this;
    }

    public ConstraintsFixture outOfPlaneAngle(double degrees) {
        outOfPlaneAngle = OptionalDouble.of(degrees);
        return this;
    }

    public ConstraintsFixture maxPuncture(double mm) {
        maxPuncture = OptionalDouble.of(mm);
        return this;
    }

    public ConstraintsFixture steepPuncture(double mm) {
        steepPuncture = OptionalDouble.of(mm);
        return this;
    }

    public Constraints build() {
        return new Constraints(
                band,
                footprintClearance,
                atEdge,
                reserve,
                caution,
                overshoot,
                leadInMax,
                heelInMax,
                prefer,
                outOfPlaneAngle,
                maxPuncture,
                steepPuncture);
    }
}
