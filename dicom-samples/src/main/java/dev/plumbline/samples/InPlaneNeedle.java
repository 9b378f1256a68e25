// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.geometry.Side;

/**
 * A needle in the image plane.
 *
 * @param tip deepest point
 * @param angleToSkinDeg within (0, 80]
 * @param from the side of the image it comes from
 * @param seen which part of it lies in the beam
 * @param diameterMm outer; also the spacing of its repetitions
 */
public record InPlaneNeedle(ScanPoint tip, double angleToSkinDeg, Side from, Seen seen, double diameterMm)
        implements NeedlePose {
    /**
     * The part in the beam, as shares of the way from where the picture can first show the needle (0) to the tip (1).
     */
    public record Seen(double from, double to) {
        public static final Seen WHOLE = new Seen(-1, 1);
        public static final Seen NEAR_PART = new Seen(-1, 0.45);
        public static final Seen MIDDLE_PART = new Seen(0.3, 0.68);
        public static final Seen FAR_PART = new Seen(0.55, 1);
        public static final Seen NOTHING = new Seen(2, 2);

        public boolean isNothing() {
            return from >= to;
        }

        /** The tip itself lies in the beam. */
        public boolean hasTip() {
            return !isNothing() && to >= 1;
        }
    }

    public InPlaneNeedle {
        if (!(angleToSkinDeg > 0) || angleToSkinDeg > 80) {
            throw new IllegalArgumentException("The generator draws needles up to 80 degrees.");
        }
    }

    /** +1 from the right, -1 from the left. */
    double sign() {
        return from == Side.RIGHT ? 1 : -1;
    }

    /** From tip towards entry, in units of length. */
    ScanPoint backwards() {
        double angle = Math.toRadians(angleToSkinDeg);
        return new ScanPoint(sign() * StrictMath.cos(angle), -StrictMath.sin(angle));
    }

    /** The place on the shaft this far behind the tip. */
    public ScanPoint behindTip(double mm) {
        ScanPoint back = backwards();
        return tip.plus(mm * back.acrossMm(), mm * back.depthMm());
    }

    /** Length from the skin to the tip. */
    public double pathMm(Transducer transducer) {
        return (tip.depthMm() - transducer.skinDepthMm()) / -backwards().depthMm();
    }

    public ScanPoint entry(Transducer transducer) {
        return behindTip(pathMm(transducer));
    }

    /** How far behind the tip the outermost beam meets the shaft; the whole path where it is under the face all the way. */
    double firstSeenBehindTipMm(Transducer transducer) {
        double inside = 0;
        double outside = pathMm(transducer);
        for (int i = 0; i < 60; i++) {
            double middle = (inside + outside) / 2;
            if (inField(behindTip(middle), transducer)) {
                inside = middle;
            } else {
                outside = middle;
            }
        }
        return inside;
    }

    /** Some of it can be seen: part of it lies in the beam, and the tip has reached the field. */
    boolean shows(Transducer transducer) {
        return !seen.isNothing() && inField(tip, transducer);
    }

    private static boolean inField(ScanPoint place, Transducer transducer) {
        return Math.abs(transducer.beam(place)) <= 1 && transducer.rangeMm(place) >= 0;
    }

    @Override
    public ScanPoint end() {
        return tip;
    }

    @Override
    public InPlaneNeedle withdrawn(double byMm) {
        return new InPlaneNeedle(behindTip(byMm), angleToSkinDeg, from, seen, diameterMm);
    }

    @Override
    public InPlaneNeedle lostFromItsFarEnd(double left) {
        Seen rest = left == 0 ? Seen.NOTHING : new Seen(seen.from(), Math.min(seen.to(), left));
        return new InPlaneNeedle(tip, angleToSkinDeg, from, rest, diameterMm);
    }

    @Override
    public Structure echo(Transducer transducer) {
        return ShaftEcho.of(this, transducer);
    }
}
