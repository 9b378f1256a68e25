// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Region;
import java.util.List;
import java.util.Optional;

/**
 * Colour Doppler laid over part of a pane: moving blood red or blue, slower and darker towards the wall.
 *
 * @param box on the screen
 */
record ColourFlow(Region box, List<Stream> streams, Texture grain) {
    private static final double STILL_RING = 0.12;

    /** Blood in a vessel, towards the probe (red) or away from it (blue). */
    record Stream(Vessel vessel, boolean towards) {
        /** Speed as a share of that in the middle; not positive outside. */
        double speed(ScanPoint place) {
            double x = (place.acrossMm() - vessel.center().acrossMm()) / vessel.acrossMm();
            double y = (place.depthMm() - vessel.center().depthMm()) / vessel.downMm();
            return 1 - x * x - y * y;
        }

        Screen.Ink ink(double speed) {
            int strong = (int) (110 + 145 * speed);
            int weak = (int) (130 * speed * speed);
            return towards ? new Screen.Ink(strong, weak, 20) : new Screen.Ink(20, weak, strong);
        }
    }

    void paint(ImageArea area, Screen screen) {
        for (int row = box.minRow(); row <= box.maxRow(); row++) {
            for (int column = box.minColumn(); column <= box.maxColumn(); column++) {
                ScanPoint place = area.toPlace(new PointPx(column + 0.5, row + 0.5));
                Optional<Screen.Ink> ink = onEdge(column, row) ? Optional.of(Screen.Ink.PALE) : ink(place);
                if (ink.isPresent()) {
                    screen.dot(column, row, ink.get());
                }
            }
        }
    }

    private Optional<Screen.Ink> ink(ScanPoint place) {
        double uneven = 0.16 * grain.at(place.acrossMm() / 0.7, place.depthMm() / 0.45);
        for (Stream stream : streams) {
            double speed = stream.speed(place) + uneven;
            if (speed > STILL_RING) {
                return Optional.of(stream.ink(Math.min(1, speed)));
            }
        }
        return Optional.empty();
    }

    private boolean onEdge(int column, int row) {
        return column == box.minColumn() || column == box.maxColumn() || row == box.minRow() || row == box.maxRow();
    }
}
