// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.PointPx;
import java.util.ArrayList;
import java.util.List;

/** Where the labels of a scene would like to stand. */
final class LabelWishes {
    private final Grid grid;
    private final Box stage;
    private final List<Item> items;
    private final Drawn drawn;

    LabelWishes(Grid grid, Box stage, List<Item> items, Drawn drawn) {
        this.grid = grid;
        this.stage = stage;
        this.items = items;
        this.drawn = drawn;
    }

    Wish of(Item.Label label) {
        Xy arc = drawn.arcMiddles().get(label.role());
        if (arc != null && stage.holds(arc)) {
            return Wish.at(label.role(), label.lines(), arc);
        }
        PointPx first = label.anchors().get(0);
        if (label.anchors().size() == 1 && !stage.holds(grid.xy(first))) {
            List<String> lines = new ArrayList<>(label.lines());
            if (label.role() != Role.PLAN_ANGLE && label.role() != Role.OBSERVED_ANGLE) {
                lines.add("(beyond this picture)");
            }
            return Wish.at(label.role(), lines, whereItLeaves(first));
        }
        return new Wish(
                label.role(),
                label.lines(),
                label.anchors().stream().map(grid::xy).toList(),
                label.inside());
    }

    /** Where the path that ends beyond the stage crosses the stage's border. */
    private Xy whereItLeaves(PointPx end) {
        Xy beyond = grid.xy(end);
        for (Item item : items) {
            if (item instanceof Item.Run run
                    && !run.closed()
                    && run.points().get(0).equals(end)) {
                Xy other = grid.xy(run.points().get(run.points().size() - 1));
                if (stage.holds(other)) {
                    return other.towards(beyond, stage.exit(other, beyond).orElse(1));
                }
            }
        }
        return stage.nearestTo(beyond);
    }
}
