// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Spot;
import java.util.ArrayList;
import java.util.List;

/**
 * Where a straight piece of path crosses an outline, and how far it would have to move sideways to leave it.
 *
 * <p>The crossings cut the outline into chains; each begins on one side of the path. To leave it to one side the path has to
 * move by the farthest corner of the chains that begin there. Source: elementary.
 */
final class OutlineCrossing {
    private final Obstacle outline;
    private final Spot from;
    private final Spot way;
    /** Edges that are crossed, in the order of the outline. */
    private final List<Integer> crossed = new ArrayList<>();

    private OutlineCrossing(Obstacle outline, Spot from, Spot to) {
        this.outline = outline;
        this.from = from;
        way = to.minus(from);
    }

    static OutlineCrossing of(Obstacle outline, Spot from, Spot to) {
        OutlineCrossing crossing = new OutlineCrossing(outline, from, to);
        for (int i = 0; i < outline.corners().size(); i++) {
            if (crossing.crosses(i)) {
                crossing.crossed.add(i);
            }
        }
        return crossing;
    }

    boolean any() {
        return !crossed.isEmpty();
    }

    /** Corners on the path count as lying to its right, so that a corner that is only touched is no crossing of two edges. */
    private boolean crosses(int edge) {
        Spot a = outline.corner(edge);
        Spot b = outline.corner(edge + 1);
        double sideA = way.cross(a.minus(from));
        double sideB = way.cross(b.minus(from));
        if (sideA >= 0 == sideB >= 0) {
            return false;
        }
        Spot along = b.minus(a);
        double start = along.cross(from.minus(a)) / along.length();
        double end = along.cross(from.plus(way, 1).minus(a)) / along.length();
        // A path that ends on the outline touches it.
        return Math.min(start, end) < -Intervals.TOLERANCE_MM && Math.max(start, end) > Intervals.TOLERANCE_MM;
    }

    private double offset(int corner) {
        return way.cross(outline.corner(corner).minus(from)) / way.length();
    }

    Obstacle.Nearest depth() {
        return crossed.size() < 2 ? wholeDepth() : chainDepth();
    }

    /** With one end inside: the whole outline has to be left to one side. */
    private Obstacle.Nearest wholeDepth() {
        int left = 0;
        int right = 0;
        for (int i = 0; i < outline.corners().size(); i++) {
            left = offset(i) < offset(left) ? i : left;
            right = offset(i) > offset(right) ? i : right;
        }
        return nearer(left, right);
    }

    private Obstacle.Nearest chainDepth() {
        int[] farthest = {-1, -1};
        for (int c = 0; c < crossed.size(); c++) {
            int first = crossed.get(c) + 1;
            int last = c + 1 < crossed.size()
                    ? crossed.get(c + 1)
                    : crossed.get(0) + outline.corners().size();
            int side = offset(first) >= 0 ? 1 : 0;
            for (int i = first; i <= last; i++) {
                boolean onSide = offset(i) >= 0 == (side == 1);
                if (onSide && (farthest[side] < 0 || Math.abs(offset(i)) > Math.abs(offset(farthest[side])))) {
                    farthest[side] = i % outline.corners().size();
                }
            }
        }
        return farthest[0] < 0 || farthest[1] < 0 ? wholeDepth() : nearer(farthest[0], farthest[1]);
    }

    private Obstacle.Nearest nearer(int a, int b) {
        int corner = Math.abs(offset(a)) <= Math.abs(offset(b)) ? a : b;
        return new Obstacle.Nearest(Obstacle.Place.CROSSED, corner, -Math.abs(offset(corner)));
    }
}
