// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import java.util.List;
import java.util.stream.Collectors;

/** Numbers in rounded words: whole millimetres, angles to 5 degrees, slopes as small whole numbers. */
final class Words {
    private static final int ANGLE_STEP = 5;
    private static final int MOST_DOWN = 5;
    private static final int MOST_ALONG = 12;
    private static final double CLOSE_ENOUGH_DEG = 1;

    private Words() {}

    static String mm(double millimetres) {
        return Math.round(millimetres) + " mm";
    }

    static String degrees(double degrees) {
        return Math.round(degrees / ANGLE_STEP) * ANGLE_STEP + "\u00b0";
    }

    /** "an 80 mm" but "a 50 mm". */
    static String article(double millimetres) {
        long whole = Math.round(millimetres);
        boolean vowel = whole == 8 || whole == 11 || whole == 18 || (whole >= 80 && whole < 90);
        return vowel ? "an" : "a";
    }

    /** The slope as whole numbers along and down, the smallest that come within a degree. */
    static String slope(double degrees) {
        if (degrees > Angles.STEEPEST_DEG - CLOSE_ENOUGH_DEG) {
            return "straight down";
        }
        int bestAlong = 1;
        int bestDown = 1;
        double best = Double.POSITIVE_INFINITY;
        for (int sum = 2; sum <= MOST_ALONG + MOST_DOWN && best > CLOSE_ENOUGH_DEG; sum++) {
            for (int down = 1; down < sum && down <= MOST_DOWN; down++) {
                double off = Math.abs(Math.toDegrees(Math.atan2(down, sum - down)) - degrees);
                if (sum - down <= MOST_ALONG && off < best) {
                    best = off;
                    bestAlong = sum - down;
                    bestDown = down;
                }
            }
        }
        return bestAlong + " along, " + bestDown + " down";
    }

    static String limits(List<Limit> limits) {
        return limits.stream().map(Limit::words).collect(Collectors.joining("; "));
    }
}
