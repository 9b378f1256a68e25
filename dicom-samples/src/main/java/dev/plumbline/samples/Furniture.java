// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.geometry.Region;

/** What a screen shows round the tissue: depth ruler, orientation mark, grey wedge, a few words. */
final class Furniture {
    private static final double MM_PER_TICK = 5;

    private Furniture() {}

    static void draw(SamplePane pane, Screen screen) {
        ruler(pane, screen);
        orientation(pane.area().bounds(), screen);
        Region bounds = pane.area().bounds();
        screen.text(pane.machine().name(), bounds.minColumn(), bounds.minRow() - 13, Screen.Ink.DIM);
    }

    /** A tick every 5 mm and a number every 10, right of the area. */
    private static void ruler(SamplePane pane, Screen screen) {
        Region bounds = pane.area().bounds();
        double top = -pane.area().corner().depthMm();
        int column = bounds.maxColumn() + 8;
        for (int tick = 0; tick * MM_PER_TICK <= pane.depthMm(); tick++) {
            double rows = (top + tick * MM_PER_TICK) / pane.area().pixel().mmPerRow();
            int row = bounds.minRow() + (int) Math.floor(rows);
            int length = tick % 2 == 0 ? 9 : 5;
            for (int i = 0; i < length; i++) {
                screen.dot(column + i, row, Screen.Ink.PALE);
            }
            if (tick % 2 == 0 && tick > 0) {
                screen.text(Integer.toString(tick / 2), column + 13, row - 3, Screen.Ink.PALE);
            }
        }
    }

    /** A small ring on the left: the end of the probe that bears the mark. */
    private static void orientation(Region bounds, Screen screen) {
        int column = bounds.minColumn() - 12;
        int row = bounds.minRow() + 6;
        for (int y = -4; y <= 4; y++) {
            for (int x = -4; x <= 4; x++) {
                int square = x * x + y * y;
                if (9 <= square && square <= 18) {
                    screen.dot(column + x, row + y, Screen.Ink.PALE);
                }
            }
        }
    }

    /** Grey wedge and the words that nobody may mistake this for a patient. */
    static void caption(Screen screen) {
        int height = 128;
        int top = screen.rows / 2 - height / 2;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < 8; x++) {
                screen.dot(14 + x, top + y, 255 - 2 * y);
            }
        }
        screen.text("SYNTHETIC FRAME", 14, screen.rows - 24, Screen.Ink.DIM);
        screen.text("NO PATIENT", 14, screen.rows - 14, Screen.Ink.DIM);
    }
}
