// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * The echo of a shaft in the plane: a bright line, brighter the nearer it lies to square to the beam, its repetitions
 * below, a brighter bevel, and a weak shadow.
 *
 * <p>Brightness only falls with steepness; how fast is a design choice. Source of the fall itself: Schafhalter-Zoppoth,
 * McCulloch, Gray, Reg Anesth Pain Med 2004 (doi 10.1016/j.rapm.2004.07.001), abstract.
 */
record ShaftEcho(InPlaneNeedle needle, Transducer transducer, Span seen, double lineMm) implements Structure {
    private static final double STRENGTH_DB = 12;
    private static final double THINNEST_LINE_MM = 0.025;
    private static final double OF_FACE = 0.001;
    private static final double BEVEL_MM = 1.1;
    private static final double BEVEL_GAIN = 0.9;
    private static final double FADE_MM = 1.4;
    private static final int REPEATS = 5;
    private static final double SHADOW_LOSS = 5;
    private static final Texture GLINT = new Texture(new SampleRandom(5));

    /** Distances behind the tip between which the shaft lies in the beam. */
    record Span(double nearTip, double farFromTip) {}

    static ShaftEcho of(InPlaneNeedle needle, Transducer transducer) {
        double first = needle.firstSeenBehindTipMm(transducer);
        InPlaneNeedle.Seen seen = needle.seen();
        Span span = new Span((1 - seen.to()) * first, (1 - seen.from()) * first);
        double line = THINNEST_LINE_MM + OF_FACE * transducer.spreadMm(transducer.rangeMm(needle.tip()));
        return new ShaftEcho(needle, transducer, span, line);
    }

    /**
     * Level of the reflection in dB for the sine of the angle by which the shaft is off square to the beam: 12 dB at 0,
     * 3 at 20 degrees, -8 at 45, -19 at 65.
     */
    static double levelDb(double sineOffSquare) {
        double sixth = StrictMath.pow(sineOffSquare, 6);
        return STRENGTH_DB - 26 * sineOffSquare - 14 * sixth;
    }

    @Override
    public Box bounds() {
        ScanPoint far = needle.behindTip(seen.farFromTip + 3);
        double left = Math.min(needle.tip().acrossMm(), far.acrossMm()) - 2;
        double right = Math.max(needle.tip().acrossMm(), far.acrossMm()) + 2;
        double below = needle.tip().depthMm() + 2 + REPEATS * needle.diameterMm();
        return needle.shows(transducer) ? new Box(left, right, -1e6, below) : new Box(0, -1, 0, -1);
    }

    @Override
    public void paint(Cell cell) {
        ScanPoint back = needle.backwards();
        double run = (cell.across - needle.tip().acrossMm()) * needle.sign();
        double shaftDepth = needle.tip().depthMm() + run * back.depthMm() * needle.sign() / back.acrossMm();
        double below = cell.depth - shaftDepth;
        double behindTip = run * needle.sign() / back.acrossMm();
        if (below < -0.5 || below > (REPEATS + 0.5) * needle.diameterMm() + 0.5) {
            return;
        }
        double inBeam = inBeam(behindTip);
        if (inBeam == 0) {
            return;
        }
        double sine = offSquare(cell);
        double amplitude = Decibels.amplitude(levelDb(sine)) * inBeam;
        double patch = 0.7 + 0.3 * GLINT.at(behindTip / 2.3, 1);
        double bevel = needle.seen().hasTip() ? Cell.step(BEVEL_MM - behindTip, 0, 0.5) : 0;
        cell.mirror += amplitude * (0.5 + 0.5 * patch) * (1 + BEVEL_GAIN * bevel) * Cell.bell(below, lineMm);
        cell.mirror += 0.9 * bevel * Cell.bell(below, 0.1);
        cell.cover(-22, 0.6 * inBeam * (1 - 0.85 * sine) * Cell.bell(below, 0.16));
        repeat(cell, below, amplitude * (1 - sine) * patch);
        cell.loss += SHADOW_LOSS * inBeam * Cell.bell(below - 0.5, 0.3);
    }

    private void repeat(Cell cell, double below, double amplitude) {
        double level = 0.14;
        for (int k = 1; k <= REPEATS; k++) {
            cell.mirror += amplitude * level * Cell.bell(below - k * needle.diameterMm(), lineMm * (1 + 0.25 * k));
            level *= 0.4;
        }
    }

    private double inBeam(double behindTip) {
        double end = needle.seen().hasTip() ? 0.25 : FADE_MM;
        return Cell.step(behindTip - seen.nearTip, -end / 2, end / 2)
                * Cell.step(seen.farFromTip - behindTip, -FADE_MM / 2, FADE_MM / 2);
    }

    /** Sine of the angle between the shaft and the wave front at a place. */
    private double offSquare(Cell cell) {
        double lean = transducer.leanOf(transducer.beam(new ScanPoint(cell.across, cell.depth)));
        ScanPoint back = needle.backwards();
        return lean == 0
                ? Math.abs(back.depthMm())
                : Math.abs(back.acrossMm() * StrictMath.sin(lean) + back.depthMm() * StrictMath.cos(lean));
    }
}
