// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.List;

/** Line styles and symbols of every role, in em. Each can be told from the others without its colour. */
final class Look {
    /** Half the distance between the two rails of an observed shaft, which leave the needle's own echo in view. */
    static final double RAIL = 0.42;

    private Look() {}

    static Ink ink(Role role) {
        return switch (role) {
            case FAN, PLAN_LEAD_IN, PLAN_PATH, PROPOSED_LEAD_IN, PROPOSED_PATH, PLAN_ANGLE, ENTRY, FIRST_SEEN, TARGET ->
                Ink.PLAN;
            case OBSERVED_LINE,
                    OBSERVED_SHAFT,
                    OBSERVED_PATH,
                    OBSERVED_ANGLE,
                    SHAFT_MARK,
                    OBSERVED_ENTRY,
                    SEEN_END,
                    TIP,
                    CROSSING -> Ink.OBSERVED;
            case HAZARD, HAZARD_MARGIN -> Ink.HAZARD;
            case NERVE -> Ink.NERVE;
            case SKIN, SKIN_BEYOND, PROBE, RULER, DEPTH_SCALE -> Ink.SKIN;
            case DIFFERENCE -> Ink.TEXT;
        };
    }

    static Pen pen(Role role) {
        Pen line = Pen.line(ink(role), 0.13);
        return switch (role) {
            case FAN ->
                Pen.line(ink(role), 0.07).dashed(0.08, 0.34).withHalo(0.3).filled(0.10);
            case HAZARD_MARGIN -> Pen.line(ink(role), 0.09).dashed(0.1, 0.3).withHalo(0.5);
            case PLAN_PATH -> Pen.line(ink(role), 0.2);
            case PLAN_LEAD_IN -> Pen.line(ink(role), 0.16).dashed(0.55, 0.4).withHalo(0.5);
            case PROPOSED_PATH ->
                Pen.line(ink(role), 0.15).dashed(0.95, 0.3, 0.14, 0.3).withHalo(0.5);
            case PROPOSED_LEAD_IN ->
                Pen.line(ink(role), 0.13).dashed(0.14, 0.36).withHalo(0.5);
            case OBSERVED_LINE, OBSERVED_PATH ->
                Pen.line(ink(role), 0.15).dashed(0.15, 0.28).withHalo(0.5);
            case SKIN_BEYOND -> line.dashed(0.6, 0.4);
            case PLAN_ANGLE, OBSERVED_ANGLE, DIFFERENCE -> Pen.line(ink(role), 0.1);
            case PROBE -> Pen.line(ink(role), 0.22);
            default -> line;
        };
    }

    static boolean isSymbol(Role role) {
        return switch (role) {
            case ENTRY, FIRST_SEEN, TARGET, SHAFT_MARK, OBSERVED_ENTRY, SEEN_END, TIP, CROSSING -> true;
            default -> false;
        };
    }

    /** Room that labels leave free about a symbol, in em from its middle. */
    static double clearing(Role role) {
        return switch (role) {
            case TARGET, TIP, SEEN_END, CROSSING -> 1.15;
            case SHAFT_MARK -> 0.4;
            default -> 0.6;
        };
    }

    static List<Element> symbol(Role role, Xy at, double em) {
        Pen pen = Pen.line(ink(role), 0.14).times(em);
        Symbols draw = new Symbols(role.kind(), at, em, pen);
        return switch (role) {
            case ENTRY -> List.of(draw.ring(0.34, 1));
            case FIRST_SEEN -> List.of(draw.square(0.32));
            case TARGET -> draw.reticle();
            case OBSERVED_ENTRY -> List.of(draw.diamond(0.4, 1));
            case TIP -> List.of(draw.diamond(0.62, 0));
            case SEEN_END -> List.of(draw.broken(0.55));
            case SHAFT_MARK -> draw.cross(0.26);
            case CROSSING -> draw.corners(0.75);
            default -> throw new IllegalArgumentException(role + " has no symbol.");
        };
    }

    /** Simple figures about a point; sizes in em. */
    private record Symbols(String kind, Xy at, double em, Pen pen) {
        Element ring(double radius, double filling) {
            return new Element.Oval(kind, at, radius * em, radius * em, pen.filled(filling));
        }

        /** Open and broken: nobody has said what this is. */
        Element broken(double radius) {
            return new Element.Oval(
                    kind,
                    at,
                    radius * em,
                    radius * em,
                    pen.dashed(0.32 * em, 0.22 * em).withHalo(0.5));
        }

        Element square(double half) {
            double h = half * em;
            return closed(List.of(at.plus(-h, -h), at.plus(h, -h), at.plus(h, h), at.plus(-h, h)), 0);
        }

        Element diamond(double half, double filling) {
            double h = half * em;
            return closed(List.of(at.plus(0, -h), at.plus(h, 0), at.plus(0, h), at.plus(-h, 0)), filling);
        }

        List<Element> cross(double half) {
            double h = half * em;
            return List.of(bar(at.plus(-h, -h), at.plus(h, h)), bar(at.plus(-h, h), at.plus(h, -h)));
        }

        /** Four corners about a dot that is to stay in view. */
        List<Element> corners(double half) {
            double h = half * em;
            double s = 0.4 * em;
            List<Element> corners = new ArrayList<>();
            for (int x = -1; x <= 1; x += 2) {
                for (int y = -1; y <= 1; y += 2) {
                    Xy corner = at.plus(x * h, y * h);
                    corners.add(new Element.Trace(
                            kind, List.of(corner.plus(-x * s, 0), corner, corner.plus(0, -y * s)), false, pen));
                }
            }
            return corners;
        }

        /** A ring with four ticks and an open middle, so that the tissue at the target stays in view. */
        List<Element> reticle() {
            double in = 0.5 * em;
            double out = 0.95 * em;
            return List.of(
                    ring(0.5, 0),
                    bar(at.plus(in, 0), at.plus(out, 0)),
                    bar(at.plus(-in, 0), at.plus(-out, 0)),
                    bar(at.plus(0, in), at.plus(0, out)),
                    bar(at.plus(0, -in), at.plus(0, -out)));
        }

        private Element bar(Xy from, Xy to) {
            return new Element.Trace(kind, List.of(from, to), false, pen);
        }

        private Element closed(List<Xy> points, double filling) {
            return new Element.Trace(kind, points, true, pen.filled(filling));
        }
    }
}
