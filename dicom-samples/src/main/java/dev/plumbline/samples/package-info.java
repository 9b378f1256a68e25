// SPDX-License-Identifier: Apache-2.0
/**
 * Synthetic B-mode frames with the truth behind them: pixels, calibration and marks as plain values.
 *
 * <p>Lengths are millimetres, levels decibels. Everything is drawn from one seed and computed without the platform's own
 * transcendental functions, so the same seed gives the same bytes on every machine. The pictures are invented; how
 * tissue looks here is a design choice, made by eye, no source.
 */
@NullMarked
package dev.plumbline.samples;

import org.jspecify.annotations.NullMarked;
