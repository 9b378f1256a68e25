// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The triangle of puncture, beam and crossing, seen from the probe's end and true to scale. */
final class SideViewFigure {
    private static final String KIND = "side-view";
    private static final double HEIGHT_EM = 8.5;
    private static final double LEFT_EM = 5.2;
    private static final double TOP_EM = 4.4;
    private static final double FOOT_EM = 1;

    private final Note.SideView view;
    private final double em;
    private final double perMm;
    private final double height;
    private final double width;
    private final List<Element> elements = new ArrayList<>();

    SideViewFigure(Note.SideView view, double em, double width) {
        this.view = view;
        this.em = em;
        this.width = width;
        double across =
                crossings().mapToDouble(Note.Crossing::punctureDistanceMm).max().orElse(10) + 3;
        double down = crossings().mapToDouble(Note.Crossing::depthMm).max().orElse(10) + 3;
        this.perMm = Math.min((width - LEFT_EM * em - 3 * em) / across, HEIGHT_EM * em / down);
        this.height = (TOP_EM + FOOT_EM) * em + down * perMm;
    }

    private Stream<Note.Crossing> crossings() {
        return Stream.of(view.planned(), view.observed()).flatMap(Optional::stream);
    }

    Block block() {
        Element.Type head = new Element.Type(0.82 * em, true, Ink.TEXT, false);
        elements.add(Typesetter.text(KIND, "Seen from the probe's end", new Xy(0, Typesetter.baseline(head)), head));
        Pen skin = Pen.line(Ink.SKIN, 0.13 * em).withHalo(0);
        elements.add(line("side-view-skin", new Xy(0.4 * em, at(0, 0).y()), new Xy(width - em, at(0, 0).y()), skin));
        Pen beam = new Pen(Ink.SKIN, 0.09 * em, List.of(0.5 * em, 0.35 * em), 0, 0);
        elements.add(line("side-view-beam", at(0, 0), new Xy(at(0, 0).x(), height - 0.4 * em), beam));
        probe();
        view.planned().ifPresent(this::planned);
        view.observed().ifPresent(this::observed);
        return new Block(elements, height);
    }

    private void probe() {
        double half = view.probeHalfThicknessMm().orElse(0) * perMm;
        if (half > 0) {
            Xy face = at(0, 0);
            Pen pen = Look.pen(Role.PROBE).times(em).withHalo(0);
            elements.add(NoteBlocks.rectangle(
                    "side-view-probe", new Box(face.x() - half, face.y() - 0.9 * em, face.x() + half, face.y()), pen));
        }
    }

    private void planned(Note.Crossing plan) {
        Xy puncture = at(plan.punctureDistanceMm(), 0);
        Xy crossing = at(0, plan.depthMm());
        elements.add(line(
                "side-view-plan",
                puncture,
                crossing,
                Look.pen(plan.path()).times(em).withHalo(0)));
        elements.addAll(Look.symbol(Role.ENTRY, puncture, 0.8 * em));
        elements.addAll(Look.symbol(Role.TARGET, crossing, 0.8 * em));
        Pen thin = new Pen(Ink.PLAN, 0.08 * em, List.of(), 0, 0);
        double y = at(0, 0).y() - 1.5 * em;
        elements.add(line("side-view-distance", new Xy(at(0, 0).x(), y), new Xy(puncture.x(), y), thin));
        for (double x : new double[] {at(0, 0).x(), puncture.x()}) {
            elements.add(line("side-view-distance", new Xy(x, y - 0.3 * em), new Xy(x, y + 0.3 * em), thin));
        }
        Element.Type type = new Element.Type(0.82 * em, false, Ink.TEXT, false);
        elements.add(Typesetter.text(
                KIND,
                Wording.mm(plan.punctureDistanceMm()) + " from the beam",
                new Xy(at(0, 0).x(), y - 0.5 * em),
                type));
        elements.add(Typesetter.textEndingAt(KIND, Wording.mm(plan.depthMm()), crossing.plus(-1 * em, 0.1 * em), type));
        elements.add(Typesetter.textEndingAt(KIND, "deep", crossing.plus(-1 * em, 1.1 * em), type));
        double beyond =
                crossings().mapToDouble(Note.Crossing::punctureDistanceMm).max().orElse(0);
        elements.add(Typesetter.text(KIND, plan.angle(), at(beyond, 0).plus(0.7 * em, 1.1 * em), type));
    }

    private void observed(Note.Crossing seen) {
        Xy puncture = at(seen.punctureDistanceMm(), 0);
        Xy crossing = at(0, seen.depthMm());
        Pen pen = Look.pen(seen.path()).times(em).withHalo(0);
        elements.add(line("side-view-observed", puncture, crossing, pen));
        elements.addAll(Look.symbol(Role.OBSERVED_ENTRY, puncture, 0.8 * em));
        elements.addAll(Look.symbol(Role.CROSSING, crossing, 0.8 * em));
    }

    private Xy at(double distanceMm, double depthMm) {
        return new Xy(LEFT_EM * em + distanceMm * perMm, TOP_EM * em + depthMm * perMm);
    }

    private static Element line(String kind, Xy from, Xy to, Pen pen) {
        return new Element.Trace(kind, List.of(from, to), false, pen);
    }
}
