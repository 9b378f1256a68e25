// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.List;

/** A scale with ticks every step and numbers where they have room. */
final class RulerFigure {
    private static final double[] STEPS_MM = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};
    private static final double TYPE_EM = 0.74;
    private static final double NUMBER_EVERY_EM = 2.6;
    private static final double TICK_EVERY_EM = 0.7;

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

    void draw(List<Element> elements, Obstacles obstacles, List<Figures.Wish> wishes) {
        double em = grid.em();
        double perMm = zero.distanceTo(end) / ruler.lengthMm();
        double ticks = step(TICK_EVERY_EM * em / perMm);
        double numbers = Math.max(step(NUMBER_EVERY_EM * em / perMm), ticks);
        Pen pen = Look.pen(ruler.role()).times(em);
        Pen thin = new Pen(pen.ink(), 0.1 * em, List.of(), 0.7, 0);
        elements.add(new Element.Trace(ruler.role().kind(), List.of(zero, end), false, thin));
        obstacles.path(List.of(zero, end), false);
        Xy lastNumber = zero;
        for (double mm = 0; mm <= ruler.lengthMm() + 1e-9; mm += ticks) {
            boolean numbered = Math.abs(mm / numbers - Math.rint(mm / numbers)) < 1e-9;
            Xy foot = zero.towards(end, mm / ruler.lengthMm());
            Xy top = foot.plus(out.x() * tick(numbered), out.y() * tick(numbered));
            if (!stage.holds(foot)) {
                continue;
            }
            elements.add(new Element.Trace(ruler.role().kind() + "-tick", List.of(foot, top), false, thin));
            if (numbered && number(Wording.number(mm, 0), top, elements, obstacles)) {
                lastNumber = foot;
            }
        }
        Xy middle = zero.towards(lastNumber, 0.5).plus(out.x() * 2.2 * em, out.y() * 2.2 * em);
        wishes.add(new Figures.Wish(ruler.role(), List.of(ruler.caption()), middle));
    }

    private double tick(boolean numbered) {
        return (numbered ? 0.7 : 0.4) * grid.em();
    }

    private boolean number(String text, Xy top, List<Element> elements, Obstacles obstacles) {
        double size = TYPE_EM * grid.em();
        double width = Lettering.width(text, size, false);
        double height = Lettering.ASCENT * size;
        double gap = 0.22 * grid.em();
        Xy middle = top.plus(out.x() * (gap + width / 2), out.y() * (gap + height / 2));
        Box box = Box.around(middle, width / 2, height / 2);
        if (!stage.holds(box) || obstacles.forbid(box)) {
            return false;
        }
        elements.add(new Element.Text(
                ruler.role().kind() + "-number",
                new Xy(box.minX(), box.maxY()),
                text,
                new Element.Type(size, false, Ink.TEXT, true),
                width));
        obstacles.keepOff(box.grown(0.15 * grid.em()));
        return true;
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
