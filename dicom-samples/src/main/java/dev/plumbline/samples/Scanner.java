// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * How the scanner sees: the figures are design choices in the range of a modern machine at 8 to 12 MHz, no source.
 *
 * @param pulse spread of a point's echo
 * @param focus where the beam is narrowest
 * @param receiver what is made up for with depth and what noise that costs
 * @param display from level to grey
 * @param looks pictures from different directions that are averaged: 1 leaves the speckle as it is, more smooth it
 */
public record Scanner(Pulse pulse, Focus focus, Receiver receiver, Display display, int looks) {
    /**
     * Standard deviations of a point's echo.
     *
     * @param axialMm along the beam
     * @param lateralMm across it, at the focus
     */
    public record Pulse(double axialMm, double lateralMm) {}

    /**
     * Beam width grows as {@code sqrt(1 + ((r - depth) / length)^2)}. Source: Gaussian beam, textbook, from memory.
     *
     * @param lengthMm distance from the focus over which the width grows by the root of two
     */
    public record Focus(double depthMm, double lengthMm) {
        double widening(double rangeMm) {
            double away = (rangeMm - depthMm) / lengthMm;
            return Math.sqrt(1 + away * away);
        }
    }

    /**
     * Time gain.
     *
     * @param gainDbPerMm made up for with depth
     * @param noiseDb of the electronics at the face, before that gain
     */
    public record Receiver(double gainDbPerMm, double noiseDb) {}

    /**
     * Log compression to 8 bits.
     *
     * @param gainDb added before it
     * @param rangeDb from black to white; white is 0 dB
     */
    public record Display(double gainDb, double rangeDb) {}

    Scanner withLooks(int others) {
        return new Scanner(pulse, focus, receiver, display, others);
    }

    /** For nerves in the first five centimetres. */
    public static Scanner high(double focusMm) {
        return new Scanner(
                new Pulse(0.095, 0.15), new Focus(focusMm, 16), new Receiver(0.9, -99), new Display(0, 60), 3);
    }

    /** For nerves just under the skin. */
    public static Scanner highest(double focusMm) {
        return new Scanner(
                new Pulse(0.07, 0.105), new Focus(focusMm, 9), new Receiver(0.9, -99), new Display(0, 60), 3);
    }

    /** For deep structures. */
    public static Scanner low(double focusMm) {
        return new Scanner(
                new Pulse(0.16, 0.42), new Focus(focusMm, 32), new Receiver(0.45, -99), new Display(4, 60), 3);
    }
}
