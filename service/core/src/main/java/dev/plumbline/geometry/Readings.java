// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;

/**
 * Readings by measurand, in the measurand's own order. A measurand that does not apply at all is absent; one that
 * applies but has no value holds its reason.
 *
 * @param <M> the measurands of one kind of answer
 */
public final class Readings<M extends Enum<M> & Measurand> {
    private final EnumMap<M, Reading> byMeasurand;

    public Readings(Map<M, Reading> byMeasurand, Class<M> kind) {
        this(new EnumMap<>(kind));
        this.byMeasurand.putAll(byMeasurand);
    }

    /** Keeps the map itself, which from then on nobody else may touch. */
    Readings(EnumMap<M, Reading> byMeasurand) {
        this.byMeasurand = byMeasurand;
    }

    /** The measurands that apply. */
    public Set<M> measurands() {
        return Collections.unmodifiableSet(byMeasurand.keySet());
    }

    public boolean has(M measurand) {
        return byMeasurand.containsKey(measurand);
    }

    /** The reading of a measurand that applies. */
    public Reading of(M measurand) {
        Reading reading = byMeasurand.get(measurand);
        if (reading == null) {
            throw new IllegalArgumentException(measurand + " does not apply here.");
        }
        return reading;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Readings<?> that && byMeasurand.equals(that.byMeasurand);
    }

    @Override
    public int hashCode() {
        return byMeasurand.hashCode();
    }

    @Override
    public String toString() {
        return byMeasurand.toString();
    }
}
