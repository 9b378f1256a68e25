// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Puts labels near their points, the more important first, each where it costs least: near, off lines, rather beside the
 * image than on it, and never over another label, a marked point or the stage's border.
 */
final class LabelPlacer {
    private static final double[] DISTANCES_EM = {0.5, 1, 1.6, 2.4, 3.4, 4.6, 6, 8, 10.5, 13.5, 17};
    private static final int DIRECTIONS = 24;
    private static final double TYPE_EM = 0.9;
    private static final double LEADER_FROM_EM = 1.5;
    private static final double LINE_COST = 2.2;
    private static final double ON_IMAGE_COST = 1.2;
    private static final double CROSSED_LABEL_COST = 8;
    private static final List<Role> FIRST = List.of(
            Role.TARGET,
            Role.TIP,
            Role.SEEN_END,
            Role.CROSSING,
            Role.PLAN_ANGLE,
            Role.OBSERVED_ANGLE,
            Role.ENTRY,
            Role.FIRST_SEEN,
            Role.HAZARD,
            Role.NERVE);

    private final Grid grid;
    private final Box stage;
    private final Box picture;
    private final Obstacles obstacles;
    private final List<Element> elements = new ArrayList<>();
    private final List<String> left = new ArrayList<>();

    LabelPlacer(Grid grid, Box stage, Box picture, Obstacles obstacles) {
        this.grid = grid;
        this.stage = stage;
        this.picture = picture;
        this.obstacles = obstacles;
    }

    /** The labels with their leaders. */
    List<Element> elements() {
        return elements;
    }

    /** Labels for which there was no room. */
    List<String> leftOver() {
        return left;
    }

    void place(List<Figures.Wish> wishes) {
        wishes.stream()
                .filter(wish -> wish.lines().stream().anyMatch(line -> !line.isEmpty()))
                .sorted(Comparator.comparingInt(LabelPlacer::rank))
                .forEach(this::place);
    }

    private static int rank(Figures.Wish wish) {
        int rank = FIRST.indexOf(wish.role());
        return rank < 0 ? FIRST.size() : rank;
    }

    private void place(Figures.Wish wish) {
        double size = typeSize(wish.role());
        boolean bold = bold(wish.role());
        double width = wish.lines().stream()
                .mapToDouble(line -> Lettering.width(line, size, bold))
                .max()
                .orElse(0);
        double height = wish.lines().size() * Lettering.LINE * size;
        Optional<Place> best = Optional.empty();
        for (double distance : DISTANCES_EM) {
            for (int i = 0; i < DIRECTIONS; i++) {
                Optional<Place> place = candidate(wish.at(), 2 * Math.PI * i / DIRECTIONS, distance, width, height);
                if (place.isPresent()
                        && (best.isEmpty() || place.get().cost() < best.get().cost())) {
                    best = place;
                }
            }
        }
        best.ifPresentOrElse(
                place -> put(wish, place.box(), size, bold), () -> left.add(String.join(", ", wish.lines())));
    }

    private record Place(Box box, double cost) {}

    private Optional<Place> candidate(Xy at, double direction, double distanceEm, double width, double height) {
        double em = grid.em();
        double dx = Math.cos(direction);
        double dy = Math.sin(direction);
        Xy middle = at.plus(dx * (distanceEm * em + width / 2), dy * (distanceEm * em + height / 2));
        Box box = Box.around(middle, width / 2, height / 2);
        Box roomy = box.grown(0.2 * em);
        if (!stage.holds(roomy) || obstacles.forbid(roomy)) {
            return Optional.empty();
        }
        double cost = distanceEm
                + LINE_COST * Math.min(obstacles.linesUnder(roomy), 6)
                + (picture.overlaps(box) ? ON_IMAGE_COST : 0);
        if (distanceEm > LEADER_FROM_EM && obstacles.cross(at.towards(box.nearestTo(at), 0.3), box.nearestTo(at))) {
            cost += CROSSED_LABEL_COST;
        }
        return Optional.of(new Place(box, cost));
    }

    private void put(Figures.Wish wish, Box box, double size, boolean bold) {
        double em = grid.em();
        Ink ink = Look.ink(wish.role());
        Xy near = box.nearestTo(wish.at());
        if (near.distanceTo(wish.at()) > LEADER_FROM_EM * em) {
            Pen thin = new Pen(ink, 0.07 * em, List.of(), 0.5, 0);
            Xy start = wish.at().towards(near, 0.7 * em / near.distanceTo(wish.at()));
            elements.add(new Element.Trace("leader", List.of(start, near), false, thin));
        }
        double baseline = box.minY() + (Lettering.LINE - Lettering.DESCENT) * size - 0.1 * size;
        for (String line : wish.lines()) {
            double width = Lettering.width(line, size, bold);
            double x = wish.at().x() > box.maxX() ? box.maxX() - width : box.minX();
            elements.add(new Element.Text(
                    wish.role().kind() + "-label",
                    new Xy(x, baseline),
                    line,
                    new Element.Type(size, bold, ink == Ink.SKIN ? Ink.TEXT : ink, true),
                    width));
            baseline += Lettering.LINE * size;
        }
        obstacles.keepOff(box.grown(0.15 * em));
    }

    private double typeSize(Role role) {
        return switch (role) {
            case RULER, DEPTH_SCALE, PROBE, SKIN -> 0.76 * grid.em();
            case PLAN_ANGLE, OBSERVED_ANGLE -> grid.em();
            default -> TYPE_EM * grid.em();
        };
    }

    private static boolean bold(Role role) {
        return role == Role.PLAN_ANGLE || role == Role.OBSERVED_ANGLE || role == Role.TARGET;
    }
}
