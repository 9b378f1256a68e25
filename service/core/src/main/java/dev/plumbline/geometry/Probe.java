// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is stated about the probe; nothing is ever invented for a length of equipment.
 *
 * @param footprintMm length of the active face along the image plane
 * @param midpoint of the transducer face on the planned frame
 * @param needleSide the side of the displayed image the needle comes from
 * @param beamThicknessMm in elevation; 1 mm where absent (about 1 mm near the elevation focus of linear probes: Scholten et
 *     al., WFUMB Ultrasound Open, abstract)
 * @param skinBeyondProbe flat where absent
 * @param housingLengthMm outer length along the image plane
 * @param housingHalfThicknessMm half the outer thickness across the image plane
 * @param imageInverted the frame is shown probe-down
 * @param arcRadiusMm curved arrays: radius of the face in the image plane
 * @param speedOfSoundMPerS in the tissue, where it is known not to be the 1540 m/s a scanner assumes; unsteered linear
 *     arrays only (see {@link SpeedOfSound})
 */
public record Probe(
        Optional<Kind> kind,
        OptionalDouble footprintMm,
        Optional<PointPx> midpoint,
        Optional<Side> needleSide,
        OptionalDouble beamThicknessMm,
        Optional<SkinBeyondProbe> skinBeyondProbe,
        OptionalDouble housingLengthMm,
        OptionalDouble housingHalfThicknessMm,
        Optional<Boolean> imageInverted,
        OptionalDouble arcRadiusMm,
        OptionalDouble speedOfSoundMPerS) {
    /** With neither a radius of the face nor a speed of sound. */
    public Probe(
            Optional<Kind> kind,
            OptionalDouble footprintMm,
            Optional<PointPx> midpoint,
            Optional<Side> needleSide,
            OptionalDouble beamThicknessMm,
            Optional<SkinBeyondProbe> skinBeyondProbe,
            OptionalDouble housingLengthMm,
            OptionalDouble housingHalfThicknessMm,
            Optional<Boolean> imageInverted) {
        this(
                kind,
                footprintMm,
                midpoint,
                needleSide,
                beamThicknessMm,
                skinBeyondProbe,
                housingLengthMm,
                housingHalfThicknessMm,
                imageInverted,
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    /** Shape of the face. */
    public enum Kind {
        LINEAR("linear"),
        CURVED("curved");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public boolean isCurved() {
        return kind.equals(Optional.of(Kind.CURVED));
    }

    /** How far the middle of a curved face may lie below the chord between its ends, mm; infinite where nothing tells. */
    double mostSagittaMm() {
        if (footprintMm.isEmpty()) {
            return Double.POSITIVE_INFINITY;
        }
        double half = footprintMm.getAsDouble() / 2;
        if (arcRadiusMm.isEmpty()) {
            return half;
        }
        double radius = arcRadiusMm.getAsDouble();
        return radius - Math.sqrt((radius - half) * (radius + half));
    }

    public static final Probe NOTHING_STATED = new Probe(
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty());
}
