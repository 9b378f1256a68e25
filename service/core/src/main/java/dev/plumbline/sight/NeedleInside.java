// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.sight;

import dev.plumbline.geometry.Readings;
import dev.plumbline.plan.PlanQuantity;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.OptionalDouble;

/**
 * What is known in numbers while looking for the needle; everything optional, lengths in mm along the needle.
 *
 * @param leadInMm planned: needle inside before the beam can show it
 * @param pathMm planned: from entry to target
 * @param insideMm needle inside now, from its depth marks
 * @param seenToMm from the puncture to the last point seen
 * @param angleToSkinDeg planned or seen, (0, 90]
 * @param beamThicknessMm of the transducer in elevation
 */
public record NeedleInside(
        OptionalDouble leadInMm,
        OptionalDouble pathMm,
        OptionalDouble insideMm,
        OptionalDouble seenToMm,
        OptionalDouble angleToSkinDeg,
        OptionalDouble beamThicknessMm) {
    public static final NeedleInside UNKNOWN = new NeedleInside(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());

    /**
     * Checks every number given.
     *
     * @throws Refusal {@link Problem.InvalidValue} for a negative or infinite length or an angle that is none
     */
    public NeedleInside {
        check("leadInMm", leadInMm, true);
        check("pathMm", pathMm, false);
        check("lengthInMm", insideMm, true);
        check("seenLengthMm", seenToMm, false);
        check("beamThicknessMm", beamThicknessMm, false);
        check("angleToSkinDeg", angleToSkinDeg, false);
        if (angleToSkinDeg.isPresent() && angleToSkinDeg.getAsDouble() > 90) {
            throw refused("angleToSkinDeg", "above 0 and up to 90 degrees");
        }
    }

    /**
     * What a plan says of it before the needle is in.
     *
     * @param beamThicknessMm of the transducer, where it is stated
     */
    public static NeedleInside planned(Readings<PlanQuantity> plan, OptionalDouble beamThicknessMm) {
        return new NeedleInside(
                value(plan, PlanQuantity.LEAD_IN),
                value(plan, PlanQuantity.PATH),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                value(plan, PlanQuantity.ANGLE_TO_SKIN),
                beamThicknessMm);
    }

    private static OptionalDouble value(Readings<PlanQuantity> plan, PlanQuantity quantity) {
        return plan.has(quantity)
                ? plan.of(quantity).fold(seen -> OptionalDouble.of(seen.value()), none -> OptionalDouble.empty())
                : OptionalDouble.empty();
    }

    private static void check(String field, OptionalDouble given, boolean zeroTaken) {
        if (given.isPresent()) {
            double value = given.getAsDouble();
            if (!Double.isFinite(value) || value < 0 || (value == 0 && !zeroTaken)) {
                throw refused(field, zeroTaken ? "a length from 0" : "a number above 0");
            }
        }
    }

    private static Refusal refused(String field, String what) {
        return new Refusal(new Problem.InvalidValue(
                "/geometry/" + field, "The field /geometry/" + field + " must be " + what + ".", "Give " + what + "."));
    }

    /** The needle is inside farther than the planned lead-in. */
    boolean pastLeadIn() {
        return leadInMm.isPresent() && insideMm.isPresent() && insideMm.getAsDouble() > leadInMm.getAsDouble();
    }

    /** The needle is inside farther than the planned path. */
    boolean tooDeep() {
        return pathMm.isPresent() && insideMm.isPresent() && insideMm.getAsDouble() > pathMm.getAsDouble();
    }

    /**
     * Upper bound of the rotation between probe and needle about the depth axis, {@code asin(b / (2 s cos a))} in degrees,
     * for a needle seen from the puncture over s and lost there; empty where it bounds nothing. Never tells to which side.
     *
     * <p>Source: elementary; b beam thickness, a angle to the skin.
     */
    OptionalDouble rotationBoundDeg() {
        if (seenToMm.isEmpty() || angleToSkinDeg.isEmpty() || beamThicknessMm.isEmpty()) {
            return OptionalDouble.empty();
        }
        double along = 2 * seenToMm.getAsDouble() * Math.cos(Math.toRadians(angleToSkinDeg.getAsDouble()));
        double sine = beamThicknessMm.getAsDouble() / along;
        return sine > 0 && sine < 1 ? OptionalDouble.of(Math.toDegrees(Math.asin(sine))) : OptionalDouble.empty();
    }
}
