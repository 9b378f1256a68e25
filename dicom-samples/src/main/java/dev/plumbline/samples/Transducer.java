// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.geometry.Probe;

/** The array that sends and receives: where its beams start and which way they run. */
public sealed interface Transducer {
    /** Chord between the ends of the face. */
    double footprintMm();

    Probe.Kind kind();

    /** Depth of the skin beside the face, seen from the face's middle: zero or, where the face bulges, negative. */
    double skinDepthMm();

    /** Shortest distance of a place from the face. */
    double rangeMm(ScanPoint place);

    /** Beam through a place: -1 is the left end of the face, 1 the right end. */
    double beam(ScanPoint place);

    /** Angle in radians by which the beam through a place leans to the right. */
    double leanOf(double beam);

    /** The place on a beam at a distance from the face. */
    ScanPoint place(double beam, double rangeMm);

    /** Distance between the outermost beams at a distance from the face, along the face. */
    double spreadMm(double rangeMm);

    /** Flat face, parallel beams. */
    record Linear(double footprintMm) implements Transducer {
        @Override
        public Probe.Kind kind() {
            return Probe.Kind.LINEAR;
        }

        @Override
        public double skinDepthMm() {
            return 0;
        }

        @Override
        public double rangeMm(ScanPoint place) {
            return place.depthMm();
        }

        @Override
        public double beam(ScanPoint place) {
            return 2 * place.acrossMm() / footprintMm;
        }

        @Override
        public double leanOf(double beam) {
            return 0;
        }

        @Override
        public ScanPoint place(double beam, double rangeMm) {
            return new ScanPoint(beam * footprintMm / 2, rangeMm);
        }

        @Override
        public double spreadMm(double rangeMm) {
            return footprintMm;
        }
    }

    /** Convex face, beams along its radii. */
    record Curved(double radiusMm, double footprintMm) implements Transducer {
        /** Half the angle between the outermost beams, radians. */
        public double halfAngle() {
            return StrictMath.asin(footprintMm / 2 / radiusMm);
        }

        @Override
        public Probe.Kind kind() {
            return Probe.Kind.CURVED;
        }

        @Override
        public double skinDepthMm() {
            return radiusMm * StrictMath.cos(halfAngle()) - radiusMm;
        }

        @Override
        public double rangeMm(ScanPoint place) {
            double down = place.depthMm() + radiusMm;
            return Math.sqrt(place.acrossMm() * place.acrossMm() + down * down) - radiusMm;
        }

        @Override
        public double beam(ScanPoint place) {
            return StrictMath.atan2(place.acrossMm(), place.depthMm() + radiusMm) / halfAngle();
        }

        @Override
        public double leanOf(double beam) {
            return beam * halfAngle();
        }

        @Override
        public ScanPoint place(double beam, double rangeMm) {
            double lean = leanOf(beam);
            double reach = radiusMm + rangeMm;
            return new ScanPoint(reach * StrictMath.sin(lean), reach * StrictMath.cos(lean) - radiusMm);
        }

        @Override
        public double spreadMm(double rangeMm) {
            return 2 * halfAngle() * (radiusMm + rangeMm);
        }
    }
}
