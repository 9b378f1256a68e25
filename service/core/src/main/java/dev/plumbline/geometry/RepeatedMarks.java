// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The same point of one frame marked several times, by one person or by several: where it is and how well it is known.
 *
 * <p>One person, n marks: mean, and the standard deviation s with n - 1 degrees of freedom on each axis. Several persons:
 * the mean is the mean of the persons' means; the variance of one mark by any of them is the variance between persons plus
 * the variance within a person, {@code s_means^2 + s_within^2 (1 - 1/m)} with m the harmonic mean of the marks each, and
 * never less than {@code s_within^2}. The two axes are pooled as the root of their mean square, because a mark has one
 * uncertainty per coordinate.
 *
 * <p>A spread below that of one pixel's width, {@code 1/sqrt(12)} px, counts as that: marks that agree to the pixel are
 * not known without doubt.
 *
 * <p>Repeating shows only what differs between marks; a place that everybody misjudges the same way stays hidden.
 *
 * <p>Source: JCGM 100:2008, 4.2 (type A evaluation, mean) and F.2.2.1 (resolution); variance components of the one-way
 * layout are elementary.
 *
 * @param persons how many people marked
 * @param marks how many marks there are altogether
 * @param mean in pixels
 * @param sdColumnPx standard deviation of one mark along the columns, as found, without the floor
 * @param sdRowPx standard deviation of one mark along the rows, as found, without the floor
 * @param onePx standard uncertainty per coordinate of one mark, floor applied
 * @param meanPx standard uncertainty per coordinate of {@link #mean}, floor applied
 */
public record RepeatedMarks(
        int persons, int marks, PointPx mean, double sdColumnPx, double sdRowPx, double onePx, double meanPx) {
    /** Standard deviation of a rectangular distribution one pixel wide. */
    static final double FLOOR_PX = 1 / Math.sqrt(12);

    /** What the program is given to compute with, and so which uncertainty belongs to it. */
    public enum Used {
        ONE_MARK("oneMark"),
        MEAN_OF_MARKS("meanOfMarks");

        private final String word;

        Used(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** Fewer than so many marks say next to nothing of a spread; with two, its own uncertainty is three quarters of it. */
    public static final int LEAST = 3;

    /**
     * Marks with or without the names of those who set them; those without a name are one person's.
     *
     * @throws Refusal {@link Problem.InvalidValue} for fewer than {@link #LEAST} marks
     */
    public static RepeatedMarks of(List<Repeat> repeats) {
        if (repeats.size() < LEAST) {
            throw tooFew(
                    "",
                    repeats.size() + " marks of one point are too few to tell their spread.",
                    "Give the point " + LEAST + " times or more, or once as column and row.");
        }
        Map<String, List<PointPx>> byPerson = new LinkedHashMap<>();
        for (Repeat repeat : repeats) {
            byPerson.computeIfAbsent(repeat.by().orElse(""), name -> new ArrayList<>())
                    .add(repeat.at());
        }
        List<List<PointPx>> groups = List.copyOf(byPerson.values());
        return groups.size() == 1 ? byOnePerson(groups.get(0)) : byPersons(groups);
    }

    /**
     * One person, the same point n times.
     *
     * @throws Refusal {@link Problem.InvalidValue} for fewer than two marks
     */
    public static RepeatedMarks byOnePerson(List<PointPx> marks) {
        if (marks.size() < 2) {
            throw tooFew("", marks.size() + " mark shows no spread.", "Mark the point two or more times.");
        }
        double sdColumn = Math.sqrt(MarkSpread.within(List.of(marks), MarkSpread.Axis.COLUMN));
        double sdRow = Math.sqrt(MarkSpread.within(List.of(marks), MarkSpread.Axis.ROW));
        double one = pooled(sdColumn, sdRow);
        return new RepeatedMarks(
                1, marks.size(), MarkSpread.mean(marks), sdColumn, sdRow, one, one / Math.sqrt(marks.size()));
    }

    /**
     * Several people, each the same point once or more often.
     *
     * @throws Refusal {@link Problem.InvalidValue} for fewer than two people or somebody without a mark
     */
    public static RepeatedMarks byPersons(List<List<PointPx>> marksOfEach) {
        if (marksOfEach.size() < 2) {
            throw tooFew("", "Marks of one person show no spread between people.", "Give the marks of two or more.");
        }
        for (int person = 0; person < marksOfEach.size(); person++) {
            if (marksOfEach.get(person).isEmpty()) {
                throw tooFew("/" + person, "This person marked nothing.", "Leave the person out.");
            }
        }
        List<PointPx> means = marksOfEach.stream().map(MarkSpread::mean).toList();
        double sdColumn = Math.sqrt(MarkSpread.ofOneMark(marksOfEach, MarkSpread.Axis.COLUMN));
        double sdRow = Math.sqrt(MarkSpread.ofOneMark(marksOfEach, MarkSpread.Axis.ROW));
        double ofMeans = pooled(
                Math.sqrt(MarkSpread.within(List.of(means), MarkSpread.Axis.COLUMN)),
                Math.sqrt(MarkSpread.within(List.of(means), MarkSpread.Axis.ROW)));
        return new RepeatedMarks(
                means.size(),
                marksOfEach.stream().mapToInt(List::size).sum(),
                MarkSpread.mean(means),
                sdColumn,
                sdRow,
                pooled(sdColumn, sdRow),
                ofMeans / Math.sqrt(means.size()));
    }

    private static double pooled(double column, double row) {
        return Math.max(FLOOR_PX, Math.sqrt((column * column + row * row) / 2));
    }

    private static Refusal tooFew(String pointer, String detail, String remedy) {
        return new Refusal(new Problem.InvalidValue(pointer, detail, remedy));
    }

    /** Standard uncertainty per coordinate of what is used, in pixels. */
    public double markPx(Used used) {
        return used == Used.MEAN_OF_MARKS ? meanPx : onePx;
    }

    /** The stated uncertainties with this one for the marks. */
    public InputUncertainty applyTo(InputUncertainty stated, Used used) {
        return new InputUncertainty(OptionalDouble.of(markPx(used)), stated.scaleRelative(), stated.scannerTolerance());
    }
}
