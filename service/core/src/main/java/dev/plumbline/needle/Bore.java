// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.needle;

/**
 * The inside of a needle as a straight round tube.
 *
 * @param innerDiameterMm positive
 * @param lengthMm positive
 */
public record Bore(double innerDiameterMm, double lengthMm) {
    private static final double MM_PER_M = 1000;
    private static final double UL_PER_M3 = 1e9;
    private static final double SECONDS_PER_MINUTE = 60;
    private static final double UL_PER_ML = 1000;

    /** To stand beside the number wherever a person reads it. */
    public static final String WORDS =
            "Needle alone, to compare gauges; real systems with tubing and hub are far higher. Never a threshold.";

    public Bore {
        if (!(innerDiameterMm > 0) || !(lengthMm > 0)) {
            throw new IllegalArgumentException("A bore has a positive diameter and length.");
        }
    }

    /**
     * What is injected, and how fast.
     *
     * @param viscosityMPaS dynamic viscosity in millipascal seconds; water has 1.002 at 20 degrees Celsius (OpenStax,
     *     College Physics, m42209, table)
     * @param flowMlPerMinute volume flow
     */
    public record Flow(double viscosityMPaS, double flowMlPerMinute) {}

    /**
     * Pressure drop along the needle in kilopascal: {@code 128 mu L Q / (pi D^4)}.
     *
     * <p>Laminar, Newtonian, fully developed flow in a straight tube. Source: Hagen-Poiseuille law; check values OpenStax,
     * College Physics, "Viscosity and Laminar Flow; Poiseuille's Law" (m42209), {@code external/poiseuille.csv}.
     */
    public double pressureDropKPa(Flow flow) {
        double pascalSeconds = flow.viscosityMPaS() / 1000;
        double length = lengthMm / MM_PER_M;
        double diameter = innerDiameterMm / MM_PER_M;
        double cubicMetresPerSecond = flow.flowMlPerMinute() * UL_PER_ML / UL_PER_M3 / SECONDS_PER_MINUTE;
        double pascal = 128 * pascalSeconds * length * cubicMetresPerSecond / (Math.PI * Math.pow(diameter, 4));
        return pascal / 1000;
    }
}
