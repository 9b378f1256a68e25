// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.readout;

import java.util.ArrayList;
import java.util.List;

/**
 * One row of a column on paper, broken into lines.
 *
 * @param heading set bold across the column, with room above it
 */
record PaperRow(boolean heading, List<String> left, List<String> right) {
    /** Share of a column's width for the names. */
    static final float NAMES = 0.55f;

    private static final float LEADING = 1.22f;
    private static final float ABOVE_HEADING = 0.7f;

    static PaperRow heading(Letters letters, String text, Measure measure) {
        return new PaperRow(true, lines(letters, text, measure, measure.width()), List.of());
    }

    static PaperRow line(Letters letters, Readout.Line line, Measure measure) {
        float gap = measure.size() * 0.6f;
        return new PaperRow(
                false,
                lines(letters, line.name(), measure, NAMES * measure.width() - gap),
                lines(letters, line.value(), measure, (1 - NAMES) * measure.width()));
    }

    /** Size of letters and width of a column, in points. */
    record Measure(float size, float width) {}

    float height(float size) {
        float lines = Math.max(left.size(), right.size()) * LEADING * size;
        return heading ? lines + ABOVE_HEADING * size : lines;
    }

    /** From the top of the row down to the base line of one of its lines. */
    float baseLine(int index, float size) {
        return (heading ? ABOVE_HEADING * size : 0) + size + index * LEADING * size;
    }

    /** Breaks at spaces and line ends, and inside a word only where it is longer than a line. */
    static List<String> lines(Letters letters, String text, Measure measure, float width) {
        List<String> lines = new ArrayList<>();
        for (String paragraph : text.split("\\R", -1)) {
            StringBuilder line = new StringBuilder();
            for (String word : paragraph.split(" ", -1)) {
                String longer = line.isEmpty() ? word : line + " " + word;
                if (letters.width(longer, measure.size()) <= width) {
                    line.setLength(0);
                    line.append(longer);
                    continue;
                }
                if (!line.isEmpty()) {
                    lines.add(line.toString());
                    line.setLength(0);
                }
                line.append(broken(letters, word, new Measure(measure.size(), width), lines));
            }
            lines.add(line.toString());
        }
        return lines;
    }

    /** Puts as many whole lines of a long word as there are; gives back its rest. */
    private static String broken(Letters letters, String word, Measure measure, List<String> lines) {
        String rest = word;
        while (letters.width(rest, measure.size()) > measure.width()) {
            int end = rest.offsetByCodePoints(0, 1);
            while (end < rest.length()
                    && letters.width(rest.substring(0, rest.offsetByCodePoints(end, 1)), measure.size())
                            <= measure.width()) {
                end = rest.offsetByCodePoints(end, 1);
            }
            if (end == rest.length()) {
                break;
            }
            lines.add(rest.substring(0, end));
            rest = rest.substring(end);
        }
        return rest;
    }
}
