// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Puts labels near their points, the more important first, each where it costs least: near, off lines, rather beside the
 * image than on it, and never over another label, a marked point or the stage's border.
 */
final class LabelPlacer {
    private static final double[] DISTANCES_EM = {0.5, 1, 1.6, 2.4, 3.4, 4.6, 6, 8, 10.5, 13.5, 17};
    private static final int DIRECTIONS = 24;
    private static final double TYPE_EM = 0.9;
    private static final double LEADER_FROM_EM = 1.9;
    private static final double CLEAR_OF_SYMBOL_EM = 1.2;
    private static final double LINE_COST = 2.2;
    private static final double ON_IMAGE_COST = 1.2;
    private static final double CROSSED_LABEL_COST = 30;
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
    private final Set<Role> placed = EnumSet.noneOf(Role.class);

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

    /** Roles that a label on the picture explains. */
    Set<Role> labelled() {
        return placed;
    }

    /** Labels for which there was no room. */
    List<String> leftOver() {
        return left;
    }

    void place(List<Wish> wishes) {
        wishes.stream()
                .filter(wish -> !wish.lines().isEmpty())
                .sorted(Comparator.comparingInt(LabelPlacer::rank))
                .forEach(this::place);
    }

    private static int rank(Wish wish) {
        int rank = FIRST.indexOf(wish.role());
        return rank < 0 ? FIRST.size() : rank;
    }

    private void place(Wish wish) {
        double size = typeSize(wish.role());
        boolean bold = bold(wish.role());
        double width = wish.lines().stream()
                .mapToDouble(line -> Lettering.width(line, size, bold))
                .max()
                .orElse(0);
        double height = wish.lines().size() * Lettering.LINE * size;
        Optional<Place> best = Optional.empty();
        if (wish.inside()) {
            best = judged(wish.anchors().get(0), Box.around(wish.anchors().get(0), width / 2, height / 2), 0);
        }
        for (Xy anchor :
                wish.inside() ? wish.anchors().subList(1, wish.anchors().size()) : wish.anchors()) {
            best = better(best, around(anchor, width, height));
        }
        best.ifPresentOrElse(place -> put(wish, place, size, bold), () -> left.add(String.join(", ", wish.lines())));
    }

    private record Place(Xy anchor, Box box, double cost) {}

    private static Optional<Place> better(Optional<Place> one, Optional<Place> other) {
        if (one.isPresent() && other.isPresent()) {
            return one.get().cost() <= other.get().cost() ? one : other;
        }
        return one.or(() -> other);
    }

    /** The best place about a point. */
    private Optional<Place> around(Xy anchor, double width, double height) {
        Optional<Place> best = Optional.empty();
        for (double distance : DISTANCES_EM) {
            if (best.isPresent() && best.get().cost() <= distance) {
                break; // farther places cannot cost less
            }
            for (int i = 0; i < DIRECTIONS; i++) {
                double direction = 2 * Math.PI * i / DIRECTIONS;
                double dx = Math.cos(direction) * (distance * grid.em() + width / 2);
                double dy = Math.sin(direction) * (distance * grid.em() + height / 2);
                best = better(best, judged(anchor, Box.around(anchor.plus(dx, dy), width / 2, height / 2), distance));
            }
        }
        return best;
    }

    private Optional<Place> judged(Xy anchor, Box box, double distanceEm) {
        Box roomy = box.grown(0.2 * grid.em());
        if (!stage.holds(roomy) || obstacles.forbid(roomy)) {
            return Optional.empty();
        }
        double cost = distanceEm
                + LINE_COST * Math.min(obstacles.linesUnder(roomy), 6)
                + (picture.overlaps(box) ? ON_IMAGE_COST : 0);
        Xy near = box.nearestTo(anchor);
        if (needsLeader(anchor, near) && obstacles.cross(leaderStart(anchor, near), near)) {
            cost += CROSSED_LABEL_COST;
        }
        return Optional.of(new Place(anchor, box, cost));
    }

    private boolean needsLeader(Xy anchor, Xy near) {
        return near.distanceTo(anchor) > LEADER_FROM_EM * grid.em();
    }

    /** Outside the symbol at the anchor. */
    private Xy leaderStart(Xy anchor, Xy near) {
        return anchor.towards(near, Math.min(1, CLEAR_OF_SYMBOL_EM * grid.em() / near.distanceTo(anchor)));
    }

    private void put(Wish wish, Place place, double size, boolean bold) {
        double em = grid.em();
        Ink ink = Look.ink(wish.role());
        Box box = place.box();
        Xy near = box.nearestTo(place.anchor());
        if (needsLeader(place.anchor(), near)) {
            Pen thin = new Pen(ink, 0.07 * em, List.of(), 0.5, 0);
            elements.add(new Element.Trace("leader", List.of(leaderStart(place.anchor(), near), near), false, thin));
        }
        Element.Type type = new Element.Type(size, bold, ink == Ink.SKIN ? Ink.TEXT : ink, true);
        double baseline = box.minY() + Typesetter.baseline(type);
        for (String line : wish.lines()) {
            double width = Lettering.width(line, size, bold);
            double x = place.anchor().x() > box.maxX() ? box.maxX() - width : box.minX();
            elements.add(new Element.Text(wish.role().kind() + "-label", new Xy(x, baseline), line, type, width));
            baseline += Lettering.LINE * size;
        }
        placed.add(wish.role());
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
