// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.geometry.KnownDistance;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.Arrays;
import java.util.regex.Pattern;

/** A stated scale in one line, where there is no case document: {@code C1,R1,C2,R2,MM}. */
public final class ScaleText {
    private static final Pattern NUMBERS =
            Pattern.compile("\\s*\\d{1,6}(\\.\\d{1,9})?(\\s*,\\s*\\d{1,6}(\\.\\d{1,9})?){4}\\s*");

    private ScaleText() {}

    /**
     * Two points and the millimetres between them; the points are rounded as all marks are.
     *
     * @throws Refusal {@link Problem.InvalidValue}
     */
    public static KnownDistance read(String text) {
        if (!NUMBERS.matcher(text).matches()) {
            throw unreadable();
        }
        double[] numbers = Arrays.stream(text.split(",", -1))
                .mapToDouble(number -> Double.parseDouble(number.strip()))
                .toArray();
        if (!Range.LENGTH.holds(numbers[4])) {
            throw unreadable();
        }
        return new KnownDistance(
                new PointPx(numbers[0], numbers[1]).onGrid(), new PointPx(numbers[2], numbers[3]).onGrid(), numbers[4]);
    }

    private static Refusal unreadable() {
        return new Refusal(new Problem.InvalidValue(
                "",
                "The scale is not readable.",
                "Write column and row of one point, column and row of the other, and the millimetres between them, as in"
                        + " 600,40,600,440,50."));
    }
}
