// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import java.util.ArrayList;
import java.util.List;

/**
 * Where two layers meet: a smooth line across the picture through given knots, gently undulating.
 *
 * @param knots from left to right; level beyond the outermost
 */
record Border(List<ScanPoint> knots, Wave wave) {
    /**
     * Undulation.
     *
     * @param heightMm up and down
     * @param grainMm distance over which it changes
     */
    record Wave(Texture relief, double heightMm, double grainMm) {
        double at(double across) {
            return heightMm * relief.at(across / grainMm);
        }
    }

    double at(double across) {
        return smooth(across) + wave.at(across);
    }

    /** Depth gained per millimetre to the right, undulation left out. */
    double slope(double across) {
        return 10 * (smooth(across + 0.05) - smooth(across - 0.05));
    }

    /** Cubic Hermite between knots with the tangents of Catmull and Rom; textbook, from memory. */
    private double smooth(double across) {
        int last = knots.size() - 1;
        if (across <= knots.get(0).acrossMm() || last == 0) {
            return knots.get(0).depthMm();
        }
        int right = 1;
        while (right < last && knots.get(right).acrossMm() < across) {
            right++;
        }
        ScanPoint a = knots.get(right - 1);
        ScanPoint b = knots.get(right);
        double width = b.acrossMm() - a.acrossMm();
        double t = Math.min(1, (across - a.acrossMm()) / width);
        double rise = t * t * (3 - 2 * t) * (b.depthMm() - a.depthMm());
        double start = t * (1 - t) * (1 - t) * width * tangent(right - 1);
        double end = t * t * (1 - t) * width * tangent(right);
        return a.depthMm() + rise + start - end;
    }

    private double tangent(int knot) {
        ScanPoint before = knots.get(Math.max(0, knot - 1));
        ScanPoint after = knots.get(Math.min(knots.size() - 1, knot + 1));
        return (after.depthMm() - before.depthMm()) / (after.acrossMm() - before.acrossMm());
    }

    static Border level(double depthMm, SampleRandom random) {
        return new Border(List.of(new ScanPoint(0, depthMm)), gentle(random));
    }

    /** Through pairs of across and depth. */
    static Border through(SampleRandom random, double... acrossAndDepth) {
        List<ScanPoint> knots = new ArrayList<>();
        for (int i = 0; i < acrossAndDepth.length; i += 2) {
            knots.add(new ScanPoint(acrossAndDepth[i], acrossAndDepth[i + 1]));
        }
        return new Border(List.copyOf(knots), gentle(random));
    }

    /** No undulation at all. */
    static Border flat(double depthMm) {
        return new Border(List.of(new ScanPoint(0, depthMm)), new Wave(new Texture(new SampleRandom(0)), 0, 1));
    }

    private static Wave gentle(SampleRandom random) {
        return new Wave(new Texture(random), 0.32, 5.5);
    }
}
