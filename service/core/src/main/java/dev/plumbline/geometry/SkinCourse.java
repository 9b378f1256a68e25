// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/**
 * The skin in the probe frame: under the probe the line w = 0, beyond it as stated. The tissue below it is convex in every
 * model, so that a straight path between two points of it stays in it.
 */
public sealed interface SkinCourse {
    /** Depth of the skin below the line under the probe, mm. */
    <T extends RealFieldElement<T>> T depthAt(T u);

    /** Angle by which the skin falls away from the probe, radians, positive on the needle's side. */
    <T extends RealFieldElement<T>> T inclinationAt(T u);

    /**
     * Where a line leaves the tissue.
     *
     * @param from a point in the tissue
     * @param up a direction out of it
     * @return empty where it leaves through no skin that the model describes
     */
    <T extends RealFieldElement<T>> Optional<PointMm<T>> meets(PointMm<T> from, PointMm<T> up);

    /**
     * From this u on, mm, the skin falls away from the line under the probe: a drop from the end of the face, a round limb,
     * which the face touches in its middle only, from 0.
     */
    double start();

    /** The model describes skin up to this u, mm. */
    double end();

    /** Whether the model describes skin at u. */
    default boolean reachesTo(double u) {
        return Math.abs(u) < end();
    }

    /** Where the skin crosses the circle, as u. */
    List<Double> crossings(Spot center, double radius);

    /** Where the skin crosses the segment, as u. */
    List<Double> crossings(Spot from, Spot to);

    /** Whether nobody stated a shape, so that the skin is assumed to go on as a straight line. */
    static boolean isFlat(Probe probe) {
        return probe.skinBeyondProbe()
                .map(stated -> stated instanceof SkinBeyondProbe.Flat)
                .orElse(true);
    }

    /** The model that is stated for a probe; flat where none is. A drop starts at the end of the face, which must be known. */
    static SkinCourse of(Probe probe) {
        SkinBeyondProbe stated = probe.skinBeyondProbe().orElse(new SkinBeyondProbe.Flat());
        if (stated instanceof SkinBeyondProbe.Round round) {
            return new Round(round.radiusMm());
        }
        if (stated instanceof SkinBeyondProbe.Drop drop) {
            double edge = probe.footprintMm().orElseThrow() / 2;
            return new Falling(edge, drop.dropMm() / (drop.atMm() - edge));
        }
        return new Falling(0, 0);
    }

    /** The line under the probe, going on without end; beyond the edge it falls by a constant slope, 0 for flat skin. */
    record Falling(double edgeMm, double slope) implements SkinCourse {
        @Override
        public <T extends RealFieldElement<T>> T depthAt(T u) {
            return u.getReal() <= edgeMm
                    ? u.getField().getZero()
                    : u.subtract(edgeMm).multiply(slope);
        }

        @Override
        public <T extends RealFieldElement<T>> T inclinationAt(T u) {
            return u.getField().getZero().add(u.getReal() <= edgeMm ? 0 : Math.atan(slope));
        }

        @Override
        public <T extends RealFieldElement<T>> Optional<PointMm<T>> meets(PointMm<T> from, PointMm<T> up) {
            if (up.y().getReal() >= 0) {
                return Optional.empty();
            }
            T u = from.x().subtract(from.y().multiply(up.x()).divide(up.y()));
            if (slope == 0 || u.getReal() <= edgeMm) {
                return Optional.of(new PointMm<>(u, u.getField().getZero()));
            }
            T reach = from.x().subtract(edgeMm).multiply(slope).subtract(from.y());
            PointMm<T> skin = from.plus(up, reach.divide(up.y().subtract(up.x().multiply(slope))));
            return Optional.of(skin);
        }

        @Override
        public double start() {
            return edgeMm;
        }

        @Override
        public double end() {
            return Double.POSITIVE_INFINITY;
        }

        @Override
        public List<Double> crossings(Spot center, double radius) {
            List<Double> found = new ArrayList<>();
            for (Spot direction : List.of(new Spot(1, 0), new Spot(1, slope))) {
                boolean falling = direction.w() != 0;
                for (double t : Circles.lineCrossings(new Spot(edgeMm, 0), direction, center, radius)) {
                    if (slope == 0 || (t > 0) == falling) {
                        found.add(edgeMm + t);
                    }
                }
            }
            return found;
        }

        @Override
        public List<Double> crossings(Spot from, Spot to) {
            List<Double> found = new ArrayList<>();
            Spot way = to.minus(from);
            for (double s : new double[] {0, slope}) {
                // Height above the line w = s (u - edge) falls linearly along the way.
                double start = from.w() - s * (from.u() - edgeMm);
                double change = way.w() - s * way.u();
                double t = -start / change;
                double u = from.u() + t * way.u();
                if (change != 0 && 0 <= t && t <= 1 && (slope == 0 || (u > edgeMm) == (s != 0))) {
                    found.add(u);
                }
            }
            return found;
        }
    }

    /** Round limb: the upper half of a circle that touches the line under the probe at its midpoint. */
    record Round(double radiusMm) implements SkinCourse {
        @Override
        public <T extends RealFieldElement<T>> T depthAt(T u) {
            return u.multiply(u)
                    .negate()
                    .add(radiusMm * radiusMm)
                    .sqrt()
                    .negate()
                    .add(radiusMm);
        }

        @Override
        public <T extends RealFieldElement<T>> T inclinationAt(T u) {
            return u.divide(radiusMm).asin();
        }

        @Override
        public <T extends RealFieldElement<T>> Optional<PointMm<T>> meets(PointMm<T> from, PointMm<T> up) {
            PointMm<T> fromCenter = new PointMm<>(from.x(), from.y().subtract(radiusMm));
            T a = up.along(up);
            T b = fromCenter.along(up);
            T c = fromCenter.along(fromCenter).subtract(radiusMm * radiusMm);
            T square = b.multiply(b).subtract(a.multiply(c));
            if (square.getReal() <= 0) {
                return Optional.empty();
            }
            PointMm<T> skin = from.plus(up, square.sqrt().subtract(b).divide(a));
            return skin.y().getReal() < radiusMm ? Optional.of(skin) : Optional.empty();
        }

        @Override
        public double start() {
            return 0;
        }

        @Override
        public double end() {
            return radiusMm;
        }

        @Override
        public List<Double> crossings(Spot center, double radius) {
            return Circles.crossings(new Spot(0, radiusMm), radiusMm, center, radius).stream()
                    .filter(spot -> spot.w() <= radiusMm)
                    .map(Spot::u)
                    .toList();
        }

        @Override
        public List<Double> crossings(Spot from, Spot to) {
            List<Double> found = new ArrayList<>();
            for (double t : Circles.lineCrossings(from, to.minus(from), new Spot(0, radiusMm), radiusMm)) {
                Spot spot = from.plus(to.minus(from), t);
                if (0 <= t && t <= 1 && spot.w() <= radiusMm) {
                    found.add(spot.u());
                }
            }
            return found;
        }
    }
}
