// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.readout;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Sections set in columns at the largest size at which all of them fit; what does not fit even at the smallest is left out
 * at the end, and the last line says how much.
 *
 * @param columns rows of each column, from left to right
 */
record PaperColumns(float size, float width, List<List<PaperRow>> columns) {
    static final float GAP = 16;
    private static final float[] SIZES = {8, 7.5f, 7, 6.5f, 6, 5.5f, 5};
    private static final int COUNT = 2;

    /** Room for the columns together, in points. */
    record Room(float width, float height) {}

    static PaperColumns of(Letters letters, List<Readout.Section> sections, Room room) throws IOException {
        PaperColumns columns = at(letters, sections, room, SIZES[0]);
        for (int i = 1; i < SIZES.length && columns.columns.size() > COUNT; i++) {
            columns = at(letters, sections, room, SIZES[i]);
        }
        return columns.columns.size() > COUNT ? columns.cut(letters, room) : columns;
    }

    private static PaperColumns at(Letters letters, List<Readout.Section> sections, Room room, float size)
            throws IOException {
        float width = (room.width() - GAP * (COUNT - 1)) / COUNT;
        PaperRow.Measure measure = new PaperRow.Measure(size, width);
        List<PaperRow> rows = new ArrayList<>();
        for (Readout.Section section : sections) {
            rows.add(PaperRow.heading(letters, section.heading(), measure));
            for (Readout.Line line : section.lines()) {
                rows.add(PaperRow.line(letters, line, measure));
            }
        }
        return new PaperColumns(size, width, filled(rows, size, room.height()));
    }

    /** A heading goes with the row after it. */
    private static List<List<PaperRow>> filled(List<PaperRow> rows, float size, float height) {
        List<List<PaperRow>> columns = new ArrayList<>();
        List<PaperRow> column = new ArrayList<>();
        float left = height;
        for (int i = 0; i < rows.size(); i++) {
            float needed = rows.get(i).height(size);
            boolean followed = rows.get(i).heading() && i + 1 < rows.size();
            if (needed + (followed ? rows.get(i + 1).height(size) : 0) > left && !column.isEmpty()) {
                columns.add(column);
                column = new ArrayList<>();
                left = height;
            }
            column.add(rows.get(i));
            left -= needed;
        }
        columns.add(column);
        return columns;
    }

    private PaperColumns cut(Letters letters, Room room) throws IOException {
        List<List<PaperRow>> kept = new ArrayList<>(columns.subList(0, COUNT));
        List<PaperRow> last = new ArrayList<>(kept.get(COUNT - 1));
        int left = columns.subList(COUNT, columns.size()).stream()
                .mapToInt(List::size)
                .sum();
        PaperRow note = note(letters, left);
        double height = last.stream().mapToDouble(row -> row.height(size)).sum();
        while (!last.isEmpty() && height + note.height(size) > room.height()) {
            height -= last.remove(last.size() - 1).height(size);
            left++;
            note = note(letters, left);
        }
        last.add(note);
        kept.set(COUNT - 1, last);
        return new PaperColumns(size, width, kept);
    }

    private PaperRow note(Letters letters, int left) throws IOException {
        return PaperRow.heading(
                letters,
                left + " more lines are not on this page; the structured report has them.",
                new PaperRow.Measure(size, width));
    }
}
