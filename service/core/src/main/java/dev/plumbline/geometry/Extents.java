// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;

/**
 * The longest extent that marks span on each axis, in millimetres, for every equipment of a case: what a scanner's stated
 * distance tolerance is applied to.
 */
public final class Extents {
    private record Longest(double acrossMm, double downMm) {}

    private static final Longest NOTHING = new Longest(0, 0);

    private final Map<String, Longest> byEquipment = new HashMap<>();

    public void add(String equipment, PixelSize pixel, Collection<PointPx> marks) {
        double minColumn = Double.POSITIVE_INFINITY;
        double maxColumn = Double.NEGATIVE_INFINITY;
        double minRow = Double.POSITIVE_INFINITY;
        double maxRow = Double.NEGATIVE_INFINITY;
        for (PointPx mark : marks) {
            minColumn = Math.min(minColumn, mark.column());
            maxColumn = Math.max(maxColumn, mark.column());
            minRow = Math.min(minRow, mark.row());
            maxRow = Math.max(maxRow, mark.row());
        }
        if (!marks.isEmpty()) {
            Longest before = byEquipment.getOrDefault(equipment, NOTHING);
            byEquipment.put(
                    equipment,
                    new Longest(
                            Math.max(before.acrossMm, (maxColumn - minColumn) * pixel.mmPerColumn()),
                            Math.max(before.downMm, (maxRow - minRow) * pixel.mmPerRow())));
        }
    }

    /** Longest horizontal extent; 0 where nothing was marked. */
    public double acrossMm(String equipment) {
        return byEquipment.getOrDefault(equipment, NOTHING).acrossMm;
    }

    /** Longest vertical extent; 0 where nothing was marked. */
    public double downMm(String equipment) {
        return byEquipment.getOrDefault(equipment, NOTHING).downMm;
    }
}
