// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.List;

/** Turns the items of a scene into traces and symbols at their places, and collects what labels must keep off. */
final class Figures {
    private static final double HATCH_EVERY_EM = 0.9;
    private static final double HATCH_EM = 0.42;
    private static final int ROUND_PIECES = 72;

    private final Grid grid;
    private final Box stage;
    private final Drawn drawn;

    private Figures(Grid grid, Box stage, Drawn drawn) {
        this.grid = grid;
        this.stage = stage;
        this.drawn = drawn;
    }

    static Drawn of(List<Item> items, Grid grid, Box stage) {
        Drawn drawn = new Drawn();
        Figures figures = new Figures(grid, stage, drawn);
        items.forEach(figures::draw);
        LabelWishes wishes = new LabelWishes(grid, stage, items, drawn);
        for (Item item : items) {
            if (item instanceof Item.Label label) {
                drawn.wishes().add(wishes.of(label));
            }
        }
        return drawn;
    }

    private void draw(Item item) {
        if (item instanceof Item.Run run) {
            run(run);
        } else if (item instanceof Item.Disc disc) {
            disc(disc);
        } else if (item instanceof Item.Spot spot) {
            spot(spot);
        } else if (item instanceof Item.Ruler ruler) {
            new RulerFigure(grid, stage, ruler).draw(drawn);
        } else if (item instanceof Item.Probe probe) {
            new ProbeFigure(grid, probe).draw(drawn);
        } else if (item instanceof Item.Angle angle) {
            AngleFigure.draw(angle, grid, drawn);
        }
    }

    private void run(Item.Run run) {
        List<Xy> points = run.points().stream().map(grid::xy).toList();
        Pen pen = Look.pen(run.role()).times(grid.em());
        String kind = run.role().kind();
        switch (run.role()) {
            case OBSERVED_SHAFT -> {
                rail(points, pen, 1);
                rail(points, pen, -1);
            }
            case DIFFERENCE ->
                drawn.elements().addAll(Arrow.between(kind, points.get(0), points.get(1), pen, grid.em()));
            case HAZARD -> {
                drawn.elements().add(new Element.Trace(kind, points, run.closed(), pen));
                hatch(points, pen);
            }
            default -> drawn.elements().add(new Element.Trace(kind, points, run.closed(), pen));
        }
        if (run.role() != Role.FAN) {
            drawn.obstacles().path(points, run.closed());
        }
        if (!run.closed() && run.role() != Role.SKIN_BEYOND) {
            cuts(points, pen);
        }
    }

    /** One of two parallel lines beside the shaft. */
    private void rail(List<Xy> shaft, Pen pen, int side) {
        Xy from = shaft.get(0);
        Xy to = shaft.get(1);
        double length = from.distanceTo(to);
        if (length > 0) {
            double dx = -(to.y() - from.y()) / length * side * Look.RAIL * grid.em();
            double dy = (to.x() - from.x()) / length * side * Look.RAIL * grid.em();
            drawn.line(Role.OBSERVED_SHAFT.kind(), from.plus(dx, dy), to.plus(dx, dy), pen);
        }
    }

    /** Short strokes from the outline inwards: a hazard can be told from a nerve in grey. */
    private void hatch(List<Xy> outline, Pen pen) {
        double every = HATCH_EVERY_EM * grid.em();
        double stroke = HATCH_EM * grid.em() * insideIsRight(outline);
        Pen thin = new Pen(pen.ink(), pen.width() * 0.7, List.of(), 0.4, 0);
        double carried = every / 2;
        for (int i = 0; i < outline.size(); i++) {
            Xy from = outline.get(i);
            Xy to = outline.get((i + 1) % outline.size());
            double length = from.distanceTo(to);
            for (; carried < length; carried += every) {
                Xy foot = from.towards(to, carried / length);
                double nx = -(to.y() - from.y()) / length * stroke;
                double ny = (to.x() - from.x()) / length * stroke;
                drawn.line("hazard-hatch", foot, foot.plus(nx, ny), thin);
            }
            carried -= length;
        }
    }

    /** 1 when the inside lies to the right of the way round, on axes right and down; else -1. */
    private static double insideIsRight(List<Xy> outline) {
        double area = 0;
        for (int i = 0; i < outline.size(); i++) {
            Xy a = outline.get(i);
            Xy b = outline.get((i + 1) % outline.size());
            area += a.x() * b.y() - b.x() * a.y();
        }
        return area >= 0 ? 1 : -1;
    }

    private void disc(Item.Disc disc) {
        Xy center = grid.xy(disc.center());
        double rx = disc.radiusMm() * grid.xPerMm();
        double ry = disc.radiusMm() * grid.yPerMm();
        Pen pen = Look.pen(disc.role()).times(grid.em());
        drawn.elements().add(new Element.Oval(disc.role().kind(), center, rx, ry, pen));
        List<Xy> round = new ArrayList<>();
        for (int i = 0; i < ROUND_PIECES; i++) {
            double at = 2 * Math.PI * i / ROUND_PIECES;
            round.add(center.plus(rx * Math.cos(at), ry * Math.sin(at)));
        }
        if (disc.role() == Role.HAZARD) {
            hatch(round, pen);
        }
        drawn.obstacles().path(round, true);
    }

    private void spot(Item.Spot spot) {
        Xy at = grid.xy(spot.at());
        drawn.elements().addAll(Look.symbol(spot.role(), at, grid.em()));
        double clearing = Look.clearing(spot.role()) * grid.em();
        drawn.obstacles().keepOff(Box.around(at, clearing, clearing));
    }

    /** Two short strokes where a line runs on beyond the stage. */
    private void cuts(List<Xy> points, Pen pen) {
        Xy a = points.get(0);
        Xy b = points.get(points.size() - 1);
        if (stage.holds(a) == stage.holds(b)) {
            return;
        }
        Xy in = stage.holds(a) ? a : b;
        Xy border = in.towards(
                stage.holds(a) ? b : a, stage.exit(in, stage.holds(a) ? b : a).orElse(1));
        double em = grid.em();
        Pen stroke = Pen.line(pen.ink(), 0.13 * em);
        for (double back : new double[] {0.5, 0.95}) {
            Xy foot = border.towards(in, back * em / in.distanceTo(border));
            drawn.line("runs-on", foot.plus(-0.3 * em, -0.55 * em), foot.plus(0.3 * em, 0.55 * em), stroke);
        }
    }
}
