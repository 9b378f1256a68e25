// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A transducer of the catalogue: a kind of probe, never a product.
 *
 * @param id names it within the catalogue
 * @param footprint length of the active face along the image plane
 * @param frequency range of centre frequencies
 * @param beams how thick the beam is in elevation, by depth; empty where nothing is known
 */
public record Transducer(
        String id, Probe.Kind kind, Footprint footprint, Frequency frequency, List<BeamThickness> beams) {
    public Transducer {
        beams = List.copyOf(beams);
    }

    /** Length of the active face in millimetres; of a curved array the chord between the face's ends. */
    public record Footprint(double mm, Foundation foundation) {
        public Footprint {
            if (!(mm > 0) || Double.isInfinite(mm)) {
                throw new IllegalArgumentException("A footprint is a positive length.");
            }
        }
    }

    /** Range of frequencies in megahertz. */
    public record Frequency(double lowMhz, double highMhz, Foundation foundation) {
        public Frequency {
            if (!(0 < lowMhz && lowMhz <= highMhz) || Double.isInfinite(highMhz)) {
                throw new IllegalArgumentException("A frequency range runs from low to high.");
            }
        }
    }

    /**
     * Thickness of the beam in elevation within a range of depths, both in millimetres.
     *
     * @param fromDepthMm at least 0
     * @param toDepthMm at least {@code fromDepthMm}; equal where one depth was measured
     * @param leastMm smallest thickness found
     * @param mostMm largest thickness found; empty where only "more than {@code leastMm}" is known
     */
    public record BeamThickness(
            double fromDepthMm, double toDepthMm, double leastMm, OptionalDouble mostMm, Foundation foundation) {
        public BeamThickness {
            if (!(0 <= fromDepthMm && fromDepthMm <= toDepthMm) || Double.isInfinite(toDepthMm)) {
                throw new IllegalArgumentException("Depths run downwards.");
            }
            if (!(leastMm > 0) || (mostMm.isPresent() && !(leastMm <= mostMm.getAsDouble()))) {
                throw new IllegalArgumentException("Thicknesses run from least to most.");
            }
        }

        /** Whether the thickness was found for this depth. */
        public boolean covers(double depthMm) {
            return fromDepthMm <= depthMm && depthMm <= toDepthMm;
        }
    }

    /** What is known about the beam's thickness at a depth; empty where nothing is. Never interpolated. */
    public List<BeamThickness> beamsAt(double depthMm) {
        return beams.stream().filter(beam -> beam.covers(depthMm)).toList();
    }
}
