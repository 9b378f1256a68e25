// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.List;

/** The transducer's face on the skin, turned up at its ends so that it hides little of what stands above, with its midpoint. */
final class ProbeFigure {
    private static final double END_EM = 0.55;
    private static final double TICK_EM = 0.9;

    private final Grid grid;
    private final List<Xy> face;
    private final Xy middle;
    private final Xy lift;

    ProbeFigure(Grid grid, Item.Probe probe) {
        this.grid = grid;
        this.face = probe.face().stream().map(grid::xy).toList();
        this.middle = grid.xy(probe.midpoint());
        Xy out = grid.xy(probe.outward());
        double length = middle.distanceTo(out);
        this.lift = new Xy((out.x() - middle.x()) / length, (out.y() - middle.y()) / length);
    }

    void draw(Drawn drawn) {
        Pen pen = Look.pen(Role.PROBE).times(grid.em());
        Xy left = face.get(0);
        Xy right = face.get(face.size() - 1);
        if (left.distanceTo(right) > 0) {
            List<Xy> outline = new ArrayList<>(face);
            outline.add(0, lifted(left, END_EM));
            outline.add(lifted(right, END_EM));
            drawn.elements().add(new Element.Trace(Role.PROBE.kind(), outline, false, pen));
            drawn.obstacles().path(outline, false);
            drawn.wishes().add(Wish.at(Role.PROBE, List.of("probe"), lifted(left.towards(right, 0.12), END_EM)));
        }
        drawn.line("probe-midpoint", middle, lifted(middle, TICK_EM), pen);
        drawn.wishes().add(Wish.at(Role.PROBE, List.of("midpoint"), lifted(middle, TICK_EM)));
    }

    private Xy lifted(Xy point, double byEm) {
        return point.plus(lift.x() * byEm * grid.em(), lift.y() * byEm * grid.em());
    }
}
