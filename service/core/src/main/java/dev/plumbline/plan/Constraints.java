// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import java.util.Optional;
import java.util.OptionalDouble;

/** The limits and preferences as stated; {@link #limits} fills in the defaults. */
public record Constraints(
        Optional<Band> angleBand,
        OptionalDouble footprintClearanceMm,
        Optional<Boolean> entryAtProbeEdge,
        OptionalDouble reserveMm,
        OptionalDouble cautionWithinMm,
        OptionalDouble overshootMm,
        OptionalDouble leadInMaxMm,
        OptionalDouble heelInMaxDeg,
        Optional<Preference> prefer,
        OptionalDouble outOfPlaneAngleDeg,
        OptionalDouble maxPunctureDistanceMm,
        OptionalDouble steepPunctureDistanceMm) {
    public static final Constraints NOTHING_STATED = new Constraints(
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());

    /** Working band of angles to the skin, degrees; {@code 0 < lowDeg <= highDeg < 90}. */
    public record Band(double lowDeg, double highDeg) {}

    /** Which end of the band a proposal takes. */
    public enum Preference {
        VISIBILITY("visibility"),
        SHORT_PATH("shortPath");

        private final String word;

        Preference(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * The limits in force. Defaults are design choices or common practice, no source: band 30 to 45 degrees, footprint
     * clearance 5 mm, reserve 10 mm, caution within 5 mm, overshoot 5 mm, heel-in 15 degrees, out-of-plane 45 degrees,
     * puncture at most 30 mm away, steep row at 15 mm.
     */
    public Limits limits() {
        return new Limits(
                angleBand.orElse(new Band(30, 45)),
                entryAtProbeEdge.orElse(false) ? 0 : footprintClearanceMm.orElse(5),
                reserveMm.orElse(10),
                cautionWithinMm.orElse(5),
                overshootMm.orElse(5),
                leadInMaxMm,
                heelInMaxDeg.orElse(15),
                prefer.orElse(Preference.VISIBILITY),
                outOfPlaneAngleDeg.orElse(45),
                maxPunctureDistanceMm.orElse(30),
                steepPunctureDistanceMm.orElse(15));
    }

    Constraints withEntryAtProbeEdge() {
        return new Constraints(
                angleBand,
                footprintClearanceMm,
                Optional.of(true),
                reserveMm,
                cautionWithinMm,
                overshootMm,
                leadInMaxMm,
                heelInMaxDeg,
                prefer,
                outOfPlaneAngleDeg,
                maxPunctureDistanceMm,
                steepPunctureDistanceMm);
    }

    /** Every limit with its value in force. */
    public record Limits(
            Band angleBand,
            double footprintClearanceMm,
            double reserveMm,
            double cautionWithinMm,
            double overshootMm,
            OptionalDouble leadInMaxMm,
            double heelInMaxDeg,
            Preference prefer,
            double outOfPlaneAngleDeg,
            double maxPunctureDistanceMm,
            double steepPunctureDistanceMm) {}
}
