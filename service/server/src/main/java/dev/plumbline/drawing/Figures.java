// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.PointPx;
import java.util.ArrayList;
import java.util.List;

/** Turns the items of a scene into traces and symbols at their places, and collects what labels must keep off. */
final class Figures {
    private static final double HATCH_EVERY_EM = 0.9;
    private static final double HATCH_EM = 0.42;
    private static final int ARC_PIECES = 24;

    private final Grid grid;
    private final Box stage;
    private final List<Element> elements = new ArrayList<>();
    private final Obstacles obstacles = new Obstacles();
    private final List<Wish> wishes = new ArrayList<>();

    Figures(Grid grid, Box stage) {
        this.grid = grid;
        this.stage = stage;
    }

    List<Element> elements() {
        return elements;
    }

    Obstacles obstacles() {
        return obstacles;
    }

    /** Labels that still need a place. */
    List<Wish> wishes() {
        return wishes;
    }

    /** A label and where it would like to be. */
    record Wish(Role role, List<String> lines, Xy at) {}

    void draw(List<Item> items) {
        for (Item item : items) {
            if (item instanceof Item.Run run) {
                run(run);
            } else if (item instanceof Item.Disc disc) {
                disc(disc);
            } else if (item instanceof Item.Spot spot) {
                spot(spot);
            } else if (item instanceof Item.Ruler ruler) {
                new RulerFigure(grid, stage, ruler).draw(elements, obstacles, wishes);
            } else if (item instanceof Item.Probe probe) {
                probe(probe);
            } else if (item instanceof Item.Angle angle) {
                angle(angle);
            }
        }
        for (Item item : items) {
            if (item instanceof Item.Label label) {
                wishes.add(wish(label, items));
            }
        }
    }

    private void run(Item.Run run) {
        List<Xy> points = run.points().stream().map(grid::xy).toList();
        Pen pen = Look.pen(run.role()).times(grid.em());
        String kind = run.role().kind();
        if (run.role() == Role.OBSERVED_SHAFT) {
            rail(points, pen, 1);
            rail(points, pen, -1);
        } else if (run.role() == Role.DIFFERENCE) {
            elements.addAll(Arrow.between(kind, points.get(0), points.get(1), pen, grid.em()));
        } else {
            elements.add(new Element.Trace(kind, points, run.closed(), pen));
        }
        if (run.role() == Role.HAZARD) {
            hatch(points, pen);
        }
        if (run.role() != Role.FAN) {
            obstacles.path(points, run.closed());
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
        if (length == 0) {
            return;
        }
        double dx = -(to.y() - from.y()) / length * side * Look.RAIL * grid.em();
        double dy = (to.x() - from.x()) / length * side * Look.RAIL * grid.em();
        elements.add(
                new Element.Trace(Role.OBSERVED_SHAFT.kind(), List.of(from.plus(dx, dy), to.plus(dx, dy)), false, pen));
    }

    /** Short strokes from the outline inwards: a hazard can be told from a nerve in grey. */
    private void hatch(List<Xy> outline, Pen pen) {
        double em = grid.em();
        double turn = turn(outline);
        Pen thin = new Pen(pen.ink(), pen.width() * 0.7, List.of(), 0.4, 0);
        double carried = HATCH_EVERY_EM * em / 2;
        for (int i = 0; i < outline.size(); i++) {
            Xy from = outline.get(i);
            Xy to = outline.get((i + 1) % outline.size());
            double length = from.distanceTo(to);
            while (carried < length) {
                Xy foot = from.towards(to, carried / length);
                double nx = -(to.y() - from.y()) / length * turn * HATCH_EM * em;
                double ny = (to.x() - from.x()) / length * turn * HATCH_EM * em;
                elements.add(new Element.Trace("hazard-hatch", List.of(foot, foot.plus(nx, ny)), false, thin));
                carried += HATCH_EVERY_EM * em;
            }
            carried -= length;
        }
    }

    /** 1 when the inside lies to the right of the way round on the screen's axes, else -1. */
    private static double turn(List<Xy> outline) {
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
        elements.add(new Element.Oval(disc.role().kind(), center, rx, ry, pen));
        List<Xy> round = new ArrayList<>();
        for (int i = 0; i < 72; i++) {
            double at = Math.PI * i / 36;
            round.add(center.plus(rx * Math.cos(at), ry * Math.sin(at)));
        }
        if (disc.role() == Role.HAZARD) {
            hatch(round, pen);
        }
        obstacles.path(round, true);
    }

    private void spot(Item.Spot spot) {
        Xy at = grid.xy(spot.at());
        elements.addAll(Look.symbol(spot.role(), at, grid.em()));
        double clearing = Look.clearing(spot.role()) * grid.em();
        obstacles.keepOff(Box.around(at, clearing, clearing));
    }

    /** The face on the skin and a low housing above it, with a tick at the midpoint. */
    private void probe(Item.Probe probe) {
        Xy left = grid.xy(probe.left());
        Xy right = grid.xy(probe.right());
        Xy middle = grid.xy(probe.midpoint());
        Xy out = grid.xy(probe.outward());
        double lift = 1.15 * grid.em() / middle.distanceTo(out);
        double dx = (out.x() - middle.x()) * lift;
        double dy = (out.y() - middle.y()) * lift;
        Pen pen = Look.pen(Role.PROBE).times(grid.em());
        if (left.distanceTo(right) > 0) {
            List<Xy> housing = List.of(left, right, right.plus(dx, dy), left.plus(dx, dy));
            elements.add(new Element.Trace(Role.PROBE.kind(), housing, true, pen));
            obstacles.path(housing, true);
            wishes.add(new Wish(
                    Role.PROBE, List.of("probe"), left.towards(right, 0.25).plus(dx, dy)));
        }
        elements.add(new Element.Trace(
                "probe-midpoint", List.of(middle, middle.plus(1.3 * dx, 1.3 * dy)), false, pen.filled(0)));
        wishes.add(new Wish(Role.PROBE, List.of("midpoint"), middle.plus(1.3 * dx, 1.3 * dy)));
    }

    private void angle(Item.Angle angle) {
        Xy corner = grid.xy(angle.corner());
        Xy first = grid.directionMm(corner, grid.xy(angle.first()));
        Xy second = grid.directionMm(corner, grid.xy(angle.second()));
        double from = Math.atan2(first.y(), first.x());
        double sweep = Math.IEEEremainder(Math.atan2(second.y(), second.x()) - from, 2 * Math.PI);
        double wanted = (angle.role() == Role.PLAN_ANGLE ? 4.2 : 5.8) * grid.em();
        double room = 0.6 * corner.distanceTo(grid.xy(angle.second()));
        double mm = Math.min(wanted, room) / Math.max(grid.xPerMm(), grid.yPerMm());
        List<Xy> arc = new ArrayList<>();
        for (int i = 0; i <= ARC_PIECES; i++) {
            double at = from + sweep * i / ARC_PIECES;
            arc.add(grid.plusMm(corner, new Xy(Math.cos(at), Math.sin(at)), mm));
        }
        elements.add(new Element.Trace(
                angle.role().kind(), arc, false, Look.pen(angle.role()).times(grid.em())));
        obstacles.path(arc, false);
        middles.add(new Wish(angle.role(), List.of(), arc.get(ARC_PIECES / 2)));
    }

    private final List<Wish> middles = new ArrayList<>();

    private Wish wish(Item.Label label, List<Item> items) {
        for (Wish middle : middles) {
            if (middle.role() == label.role()) {
                return new Wish(label.role(), label.lines(), inside(middle.at(), label.at(), items));
            }
        }
        return new Wish(label.role(), label.lines(), inside(grid.xy(label.at()), label.at(), items));
    }

    /** The point itself, or if it lies beyond the stage, where its path leaves the stage. */
    private Xy inside(Xy at, PointPx end, List<Item> items) {
        if (stage.holds(at)) {
            return at;
        }
        for (Item item : items) {
            if (item instanceof Item.Run run
                    && !run.closed()
                    && run.points().get(0).equals(end)) {
                Xy other = grid.xy(run.points().get(run.points().size() - 1));
                if (stage.holds(other)) {
                    double share = stage.exit(other, grid.xy(end)).orElse(1);
                    return other.towards(grid.xy(end), share);
                }
            }
        }
        return stage.nearestTo(at);
    }

    /** Two short strokes where a line runs on beyond the stage. */
    private void cuts(List<Xy> points, Pen pen) {
        Xy a = points.get(0);
        Xy b = points.get(points.size() - 1);
        if (stage.holds(a) == stage.holds(b)) {
            return;
        }
        Xy in = stage.holds(a) ? a : b;
        Xy out = stage.holds(a) ? b : a;
        Xy border = in.towards(out, stage.exit(in, out).orElse(1));
        double length = in.distanceTo(border);
        double em = grid.em();
        Pen stroke = Pen.line(pen.ink(), 0.13 * em);
        for (double back : new double[] {0.5, 0.95}) {
            Xy foot = border.towards(in, back * em / length);
            elements.add(new Element.Trace(
                    "runs-on",
                    List.of(foot.plus(-0.3 * em, -0.55 * em), foot.plus(0.3 * em, 0.55 * em)),
                    false,
                    stroke));
        }
    }
}
