// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Where two layers meet: a smooth line across the picture, gently undulating. Worked out once, then looked up. */
final class Border {
    private static final double REACH_MM = 120;
    private static final double STEP_MM = 0.05;
    private static final double WAVE_HEIGHT_MM = 0.32;
    private static final double WAVE_GRAIN_MM = 5.5;
    private static final double OVERLAP_MM = 0.5;

    private final double[] depth = new double[(int) (2 * REACH_MM / STEP_MM) + 1];
    private final double highest;
    private final double lowest;

    private Border(DoubleUnaryOperator depthAt) {
        double least = Double.MAX_VALUE;
        double most = -Double.MAX_VALUE;
        for (int i = 0; i < depth.length; i++) {
            depth[i] = depthAt.applyAsDouble(i * STEP_MM - REACH_MM);
            least = Math.min(least, depth[i]);
            most = Math.max(most, depth[i]);
        }
        highest = least;
        lowest = most;
    }

    /** No undulation at all. */
    static Border flat(double depthMm) {
        return new Border(across -> depthMm);
    }

    static Border level(double depthMm, SampleRandom random) {
        return through(random, 0, depthMm);
    }

    /** Through pairs of across and depth from left to right; level beyond the outermost. */
    static Border through(SampleRandom random, double... acrossAndDepth) {
        List<ScanPoint> knots = new ArrayList<>();
        for (int i = 0; i < acrossAndDepth.length; i += 2) {
            knots.add(new ScanPoint(acrossAndDepth[i], acrossAndDepth[i + 1]));
        }
        Texture wave = new Texture(random);
        return new Border(across -> smooth(knots, across) + WAVE_HEIGHT_MM * wave.at(across / WAVE_GRAIN_MM, 0));
    }

    /**
     * Just above the deeper of two borders: what lies below needs no painting above it, but the soft edges must meet.
     */
    static Border justAbove(Border one, Border other) {
        return new Border(across -> Math.max(one.at(across), other.at(across)) - OVERLAP_MM);
    }

    double highest() {
        return highest;
    }

    double lowest() {
        return lowest;
    }

    double at(double across) {
        double place = Math.max(0, Math.min(depth.length - 2, (across + REACH_MM) / STEP_MM));
        int left = (int) place;
        return depth[left] + (place - left) * (depth[left + 1] - depth[left]);
    }

    /** Depth gained per millimetre to the right. */
    double slope(double across) {
        return at(across + 0.5) - at(across - 0.5);
    }

    /** Cubic Hermite between knots with the tangents of Catmull and Rom; textbook, from memory. */
    private static double smooth(List<ScanPoint> knots, double across) {
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
        double start = t * (1 - t) * (1 - t) * width * tangent(knots, right - 1);
        double end = t * t * (1 - t) * width * tangent(knots, right);
        return a.depthMm() + rise + start - end;
    }

    private static double tangent(List<ScanPoint> knots, int knot) {
        ScanPoint before = knots.get(Math.max(0, knot - 1));
        ScanPoint after = knots.get(Math.min(knots.size() - 1, knot + 1));
        return (after.depthMm() - before.depthMm()) / (after.acrossMm() - before.acrossMm());
    }
}
