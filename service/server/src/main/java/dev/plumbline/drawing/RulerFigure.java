// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.List;

/** A scale with ticks every step and numbers where they have room. */
final class RulerFigure {
    private static final double[] STEPS_MM = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};
    private static final double TYPE_EM = 0.74;
    private static final double NUMBER_EVERY_EM = 2.6;
    private static final double TICK_EVERY_EM = 0.7;
    private static final double CAPTION_EM = 2.4;

    private final Grid grid;
    private final Box stage;
    private final Item.Ruler ruler;
    private final Xy zero;
    private final Xy end;
    private final Xy out;

    RulerFigure(Grid grid, Box stage, Item.Ruler ruler) {
        this.grid = grid;
        this.stage = stage;
        this.ruler = ruler;
        this.zero = grid.xy(ruler.zero());
        this.end = grid.xy(ruler.end());
        Xy outward = grid.xy(ruler.outward());
        double length = zero.distanceTo(outward);
        this.out = new Xy((outward.x() - zero.x()) / length, (outward.y() - zero.y()) / length);
    }

    void draw(Drawn drawn) {
        double em = grid.em();
        double perMm = zero.distanceTo(end) / ruler.lengthMm();
        double ticks = step(TICK_EVERY_EM * em / perMm);
        double numbers = Math.max(step(NUMBER_EVERY_EM * em / perMm), ticks);
        Pen thin = new Pen(Look.ink(ruler.role()), 0.1 * em, List.of(), 0.7, 0);
        drawn.line(ruler.role().kind(), zero, end, thin);
        drawn.obstacles().path(List.of(zero, end), false);
        Xy lastNumber = zero;
        for (double mm = 0; mm <= ruler.lengthMm() + 1e-9; mm += ticks) {
            boolean numbered = Math.abs(mm / numbers - Math.rint(mm / numbers)) < 1e-9;
            Xy foot = zero.towards(end, mm / ruler.lengthMm());
            Xy top = foot.plus(out.x() * tick(numbered), out.y() * tick(numbered));
            if (!stage.holds(foot)) {
                continue;
            }
            drawn.line(ruler.role().kind() + "-tick", foot, top, thin);
            if (numbered && number(Wording.number(mm, 0), top, drawn)) {
                lastNumber = foot;
            }
        }
        caption(lastNumber, drawn);
    }

    /** Along a level scale above its numbers; at a steep one before its zero. In its place, or else where there is room. */
    private void caption(Xy lastNumber, Drawn drawn) {
        double size = TYPE_EM * grid.em();
        double width = Lettering.width(ruler.caption(), size, false);
        double half = size * Lettering.ASCENT / 2;
        boolean level = Math.abs(out.y()) > Math.abs(out.x());
        Xy start = zero.plus(out.x() * CAPTION_EM * grid.em(), out.y() * CAPTION_EM * grid.em());
        Box box;
        if (level) {
            double side = Math.signum(end.x() - zero.x());
            double middle = start.x() + side * Math.max(width / 2, Math.abs(lastNumber.x() - zero.x()) / 2);
            double held = Math.max(stage.minX() + width / 2 + half, Math.min(stage.maxX() - width / 2 - half, middle));
            box = Box.around(new Xy(held, start.y()), width / 2, half);
        } else {
            double back = Math.signum(zero.y() - end.y()) * 1.5 * grid.em();
            double x = zero.x() + Math.signum(out.x()) * (0.9 * grid.em() + width / 2);
            double held =
                    Math.max(stage.minX() + width / 2 + half / 2, Math.min(stage.maxX() - width / 2 - half / 2, x));
            box = Box.around(new Xy(held, zero.y() + back), width / 2, half);
        }
        if (stage.holds(box) && !drawn.obstacles().forbid(box)) {
            set(ruler.role().kind() + "-caption", ruler.caption(), box, drawn);
        } else {
            drawn.wishes().add(Wish.at(ruler.role(), List.of(ruler.caption()), zero.towards(lastNumber, 0.5)));
        }
    }

    private double tick(boolean numbered) {
        return (numbered ? 0.7 : 0.4) * grid.em();
    }

    private boolean number(String text, Xy top, Drawn drawn) {
        double size = TYPE_EM * grid.em();
        double width = Lettering.width(text, size, false);
        double height = Lettering.ASCENT * size;
        double gap = 0.22 * grid.em();
        Xy middle = top.plus(out.x() * (gap + width / 2), out.y() * (gap + height / 2));
        Box box = Box.around(middle, width / 2, height / 2);
        if (!stage.holds(box) || drawn.obstacles().forbid(box)) {
            return false;
        }
        set(ruler.role().kind() + "-number", text, box, drawn);
        return true;
    }

    private void set(String kind, String text, Box box, Drawn drawn) {
        Element.Type type = new Element.Type(TYPE_EM * grid.em(), false, Ink.TEXT, true);
        drawn.elements().add(new Element.Text(kind, new Xy(box.minX(), box.maxY()), text, type, box.width()));
        drawn.obstacles().keepOff(box.grown(0.15 * grid.em()));
    }

    private static double step(double least) {
        for (double step : STEPS_MM) {
            if (step >= least) {
                return step;
            }
        }
        return STEPS_MM[STEPS_MM.length - 1];
    }
}
