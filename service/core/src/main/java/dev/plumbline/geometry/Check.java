// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.OptionalDouble;

/** Range checks of numbers and marks, each refusing by the pointer of the field to mend. */
public final class Check {
    /** Two marks nearer to each other than this fix no direction (design choice). */
    private static final double COINCIDENT_PX = 2;

    /** Three and more marks broader than this against their length fix no direction (design choice). */
    private static final double BROADEST = 0.25;

    private Check() {}

    /** Above zero and finite, where stated. */
    public static void positive(String pointer, OptionalDouble number) {
        if (number.isPresent() && !(number.getAsDouble() > 0 && Double.isFinite(number.getAsDouble()))) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer, "The value of " + pointer + " is not a number above 0.", "Give a number above 0."));
        }
    }

    /** Zero or more and finite, where stated. */
    public static void notNegative(String pointer, OptionalDouble number) {
        within(pointer, number, 0, Double.MAX_VALUE);
    }

    /** Within (0, 90) degrees, where stated. */
    public static void angle(String pointer, OptionalDouble degrees) {
        if (degrees.isPresent() && !(degrees.getAsDouble() > 0 && degrees.getAsDouble() < 90)) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    "The value of " + pointer + " is not between 0 and 90 degrees.",
                    "Give an angle above 0 and below 90 degrees."));
        }
    }

    /** Within a closed range, where stated. */
    public static void within(String pointer, OptionalDouble number, double least, double most) {
        if (number.isPresent()) {
            within(pointer, number.getAsDouble(), least, most);
        }
    }

    /** Within a closed range of finite numbers. */
    public static void within(String pointer, double number, double least, double most) {
        if (!(least <= number && number <= most)) {
            String range = most < Double.MAX_VALUE
                    ? "between " + least + " and " + most
                    : least == 0 ? "of 0 or more" : "that is finite";
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    "The value of " + pointer + " is not a number " + range + ".",
                    "Give a number " + range + "."));
        }
    }

    public static void onFrame(String pointer, PointPx mark, FrameGeometry frame) {
        if (!frame.holds(mark)) {
            throw new Refusal(new Problem.MarkOutsideFrame(pointer, frame.columns(), frame.rows()));
        }
    }

    /** No marks, or two and more on the frame that fix a direction. */
    public static void line(String pointer, List<PointPx> marks, FrameGeometry frame) {
        if (marks.size() == 1) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    "One mark of " + pointer + " fixes no line.",
                    "Give two or more marks along it, or none."));
        }
        for (int i = 0; i < marks.size(); i++) {
            onFrame(pointer + "/" + i, marks.get(i), frame);
        }
        if (!marks.isEmpty() && longest(marks) < COINCIDENT_PX) {
            throw new Refusal(new Problem.MarksCoincide(pointer));
        }
        if (marks.size() > 2 && breadthToLength(marks) > BROADEST) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    "The marks of " + pointer + " lie in no line.",
                    "Put them along one straight line, in order."));
        }
    }

    /** Ratio of the root mean square distances across and along the fitted line; elementary. */
    private static double breadthToLength(List<PointPx> marks) {
        double column = marks.stream().mapToDouble(PointPx::column).average().orElseThrow();
        double row = marks.stream().mapToDouble(PointPx::row).average().orElseThrow();
        double xx = 0;
        double yy = 0;
        double xy = 0;
        for (PointPx mark : marks) {
            xx += (mark.column() - column) * (mark.column() - column);
            yy += (mark.row() - row) * (mark.row() - row);
            xy += (mark.column() - column) * (mark.row() - row);
        }
        double difference = Math.hypot(xx - yy, 2 * xy);
        return Math.sqrt(Math.max(0, xx + yy - difference) / (xx + yy + difference));
    }

    private static double longest(List<PointPx> marks) {
        double longest = 0;
        for (PointPx a : marks) {
            for (PointPx b : marks) {
                longest = Math.max(longest, a.distanceTo(b));
            }
        }
        return longest;
    }
}
