// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/** Tissue at one place while it is painted: a cursor that moves over the medium. */
final class Cell {
    /** Millimetres to the right of the face's middle. */
    double across;
    /** Millimetres below it. */
    double depth;
    /** Millimetres below the skin as layers run: near a curved face they follow it. */
    double layer;
    /** Strength of diffuse scatter, dB. */
    double echo;
    /** Loss of the beam on both ways, dB per mm. */
    double loss;
    /** Amplitude of smooth reflection that keeps its phase. */
    double mirror;

    /** Moves the scatter towards a level; a cover of 1 replaces it. */
    void cover(double level, double cover) {
        echo += (level - echo) * cover;
    }

    /** Moves the loss towards a value. */
    void damp(double dbPerMm, double cover) {
        loss += (dbPerMm - loss) * cover;
    }

    /** A bell of height 1 and this standard deviation. Polynomial, not the exponential: (1 - x^2/8)^4 vanishes beyond 2.83 deviations. */
    static double bell(double distance, double deviation) {
        double x = distance / deviation;
        double base = 1 - x * x / 8;
        if (base <= 0) {
            return 0;
        }
        double square = base * base;
        return square * square;
    }

    /** 0 below the first edge, 1 above the second, smooth between. */
    static double step(double value, double from, double to) {
        double t = Math.max(0, Math.min(1, (value - from) / (to - from)));
        return t * t * (3 - 2 * t);
    }
}
