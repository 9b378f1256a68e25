// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/**
 * Results as formulas give them (millimetres, radians), each a number or the reason there is none; collected while
 * computing and turned into {@link Readings} at the end.
 */
public final class Quantities<M extends Enum<M> & Measurand, T extends RealFieldElement<T>> {
    private final Class<M> kind;
    private final Map<M, T> numbers;
    private final Map<M, Reason> reasons;

    public Quantities(Class<M> kind) {
        this.kind = kind;
        numbers = new EnumMap<>(kind);
        reasons = new EnumMap<>(kind);
    }

    public void put(M measurand, T number) {
        numbers.put(measurand, number);
        reasons.remove(measurand);
    }

    public void put(M measurand, Reason reason) {
        reasons.put(measurand, reason);
        numbers.remove(measurand);
    }

    public Optional<T> number(M measurand) {
        return Optional.ofNullable(numbers.get(measurand));
    }

    /** Why there is no number; empty when there is one or when the measurand does not apply. */
    public Optional<Reason> reason(M measurand) {
        return Optional.ofNullable(reasons.get(measurand));
    }

    /** The results with their uncertainties, in each measurand's unit. */
    public Readings<M> readings(Inputs<T> inputs) {
        EnumMap<M, Reading> readings = new EnumMap<>(kind);
        numbers.forEach((measurand, number) -> readings.put(measurand, reading(measurand, number, inputs)));
        reasons.forEach((measurand, reason) -> readings.put(measurand, new Reading.NotSeen(reason)));
        return new Readings<>(readings);
    }

    private Reading.Seen reading(M measurand, T number, Inputs<T> inputs) {
        Unit unit = measurand.unit();
        // Adding zero turns a negative zero into zero, which is what a reader expects to see.
        return new Reading.Seen(
                unit.fromInternal(number.getReal()) + 0.0, unit.fromInternal(inputs.standardUncertainty(number)));
    }
}
