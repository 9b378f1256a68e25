// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.List;

/** Variances of repeated marks along one axis, in square pixels. */
final class MarkSpread {
    /** Which coordinate is looked at. */
    enum Axis {
        COLUMN,
        ROW;

        double of(PointPx point) {
            return this == COLUMN ? point.column() : point.row();
        }
    }

    private MarkSpread() {}

    static PointPx mean(List<PointPx> marks) {
        return new PointPx(mean(marks, Axis.COLUMN), mean(marks, Axis.ROW));
    }

    private static double mean(List<PointPx> marks, Axis axis) {
        return marks.stream().mapToDouble(axis::of).average().orElseThrow();
    }

    /** Pooled variance within the groups; 0 where no group has two marks. */
    static double within(List<List<PointPx>> groups, Axis axis) {
        double squares = 0;
        int degrees = 0;
        for (List<PointPx> group : groups) {
            double mean = mean(group, axis);
            for (PointPx mark : group) {
                squares += (axis.of(mark) - mean) * (axis.of(mark) - mean);
            }
            degrees += group.size() - 1;
        }
        return degrees == 0 ? 0 : squares / degrees;
    }

    /** Variance of one mark by any of the persons: between persons plus within a person. */
    static double ofOneMark(List<List<PointPx>> groups, Axis axis) {
        List<PointPx> means = groups.stream().map(MarkSpread::mean).toList();
        double within = within(groups, axis);
        double ofMeans = within(List.of(means), axis);
        double reciprocal = groups.stream()
                .mapToDouble(group -> 1.0 / group.size())
                .average()
                .orElseThrow();
        return Math.max(within, ofMeans + within * (1 - reciprocal));
    }
}
