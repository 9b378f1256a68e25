// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.readout;

import java.util.ArrayList;
import java.util.List;

/**
 * Sections set in columns at the largest size at which all of them fit on the first page; what does not fit even at the
 * smallest goes on in columns of further pages.
 *
 * @param columns rows of each column, from left to right
 */
record PaperColumns(float size, float width, List<List<PaperRow>> columns) {
    static final float GAP = 16;
    private static final float[] SIZES = {8, 7.5f, 7, 6.5f, 6, 5.5f};
    /** Where there is a further page anyway, nothing need be small. */
    private static final float CONTINUED = 7.5f;

    /** Columns of a page. */
    static final int COUNT = 2;

    /**
     * Room for the columns of a page together, in points.
     *
     * @param further height on every page but the first
     */
    record Room(float width, float height, float further) {}

    static PaperColumns of(Letters letters, List<Readout.Section> sections, Room room) {
        PaperColumns columns = at(letters, sections, room, SIZES[0]);
        for (int i = 1; i < SIZES.length && columns.columns.size() > COUNT; i++) {
            columns = at(letters, sections, room, SIZES[i]);
        }
        return columns.columns.size() > COUNT ? at(letters, sections, room, CONTINUED) : columns;
    }

    /** Columns of each page, from the first page on. */
    List<List<List<PaperRow>>> pages() {
        List<List<List<PaperRow>>> pages = new ArrayList<>();
        for (int i = 0; i < columns.size(); i += COUNT) {
            pages.add(columns.subList(i, Math.min(columns.size(), i + COUNT)));
        }
        return pages;
    }

    private static PaperColumns at(Letters letters, List<Readout.Section> sections, Room room, float size) {
        float width = (room.width() - GAP * (COUNT - 1)) / COUNT;
        PaperRow.Measure measure = new PaperRow.Measure(size, width);
        List<PaperRow> rows = new ArrayList<>();
        for (Readout.Section section : sections) {
            rows.add(PaperRow.heading(letters, section.heading(), measure));
            for (Readout.Line line : section.lines()) {
                rows.add(PaperRow.line(letters, line, measure));
            }
        }
        return new PaperColumns(size, width, filled(rows, size, room));
    }

    /** A heading goes with the row after it. */
    private static List<List<PaperRow>> filled(List<PaperRow> rows, float size, Room room) {
        List<List<PaperRow>> columns = new ArrayList<>();
        List<PaperRow> column = new ArrayList<>();
        float left = room.height();
        for (int i = 0; i < rows.size(); i++) {
            float needed = rows.get(i).height(size);
            boolean followed = rows.get(i).heading() && i + 1 < rows.size();
            if (needed + (followed ? rows.get(i + 1).height(size) : 0) > left && !column.isEmpty()) {
                columns.add(column);
                column = new ArrayList<>();
                left = columns.size() < COUNT ? room.height() : room.further();
            }
            column.add(rows.get(i));
            left -= needed;
        }
        columns.add(column);
        return columns;
    }
}
