// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.List;

/** Numbers in columns, aligned right; below each number, smaller, its uncertainty or why there is none. */
final class TableFigure {
    private static final String KIND = "number";
    private static final Element.Type NAME = new Element.Type(0.8, false, Ink.TEXT, false);
    private static final Element.Type VALUE = new Element.Type(0.92, true, Ink.TEXT, false);
    private static final Element.Type SMALL = new Element.Type(0.68, false, Ink.QUIET, false);
    private static final double SMALL_WIDTH_EM = 5;

    private final Note.Table table;
    private final double em;
    private final double width;
    private final List<Element> elements = new ArrayList<>();
    private double y;

    TableFigure(Note.Table table, double em, double width) {
        this.table = table;
        this.em = em;
        this.width = width;
    }

    Block block() {
        Element.Type head = new Element.Type(0.78 * em, true, Ink.QUIET, false);
        for (int i = 0; i < table.columns().size(); i++) {
            elements.add(Typesetter.textEndingAt(
                    "column", table.columns().get(i), new Xy(right(i), y + Typesetter.baseline(head)), head));
        }
        y += 1.15 * em;
        rule();
        for (Note.Row row : table.rows()) {
            row(row);
            rule();
        }
        return new Block(elements, y);
    }

    private void row(Note.Row row) {
        double top = y + 0.14 * em;
        Typesetter names = new Typesetter("row");
        names.paragraph(row.name(), 0, nameWidth() - 0.4 * em, NAME.times(em));
        elements.addAll(new Block(names.elements(), 0).at(new Xy(0, top)));
        double lowest = top + names.height();
        for (int i = 0; i < row.cells().size(); i++) {
            lowest = Math.max(
                    lowest,
                    oneColumn()
                            ? beside(row.cells().get(i), top)
                            : below(row.cells().get(i), top, i));
        }
        elements.removeIf(
                element -> element instanceof Element.Text text && text.text().isEmpty());
        y = lowest + 0.1 * em;
    }

    /** A single column has room for the uncertainty on the number's own line. */
    private double beside(Note.Cell cell, double top) {
        Element.Type value = VALUE.times(em);
        double at = top + Typesetter.baseline(value);
        elements.add(Typesetter.textEndingAt(KIND, cell.value(), new Xy(width - SMALL_WIDTH_EM * em, at), value));
        elements.add(Typesetter.textEndingAt("uncertainty", cell.small(), new Xy(width, at), SMALL.times(em)));
        return top + Lettering.LINE * value.size();
    }

    private double below(Note.Cell cell, double top, int column) {
        Element.Type value = VALUE.times(em);
        Element.Type small = SMALL.times(em);
        elements.add(Typesetter.textEndingAt(
                KIND, cell.value(), new Xy(right(column), top + Typesetter.baseline(value)), value));
        double bottom = top + Lettering.LINE * value.size();
        for (String line : Typesetter.wrapped(cell.small(), columnWidth() - 0.3 * em, small)) {
            double at = bottom + Typesetter.baseline(small) - 0.15 * em;
            elements.add(Typesetter.textEndingAt("uncertainty", line, new Xy(right(column), at), small));
            bottom += 1.1 * small.size();
        }
        return bottom;
    }

    private void rule() {
        Pen thin = new Pen(Ink.QUIET, 0.04 * em, List.of(), 0, 0);
        elements.add(new Element.Trace("rule", List.of(new Xy(0, y), new Xy(width, y)), false, thin));
    }

    private boolean oneColumn() {
        return table.columns().size() == 1;
    }

    private double nameWidth() {
        return width - columnWidth() * table.columns().size();
    }

    private double columnWidth() {
        return width * (oneColumn() ? 0.4 : 0.22);
    }

    private double right(int column) {
        return oneColumn() ? width - SMALL_WIDTH_EM * em : nameWidth() + columnWidth() * (column + 1);
    }
}
