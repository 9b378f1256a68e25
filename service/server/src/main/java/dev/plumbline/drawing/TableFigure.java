// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.List;

/** Numbers in columns, aligned right; below each number, smaller, its uncertainty or why there is none. */
final class TableFigure {
    private static final String KIND = "number";

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
        Element.Type name = new Element.Type(0.82 * em, false, Ink.TEXT, false);
        Element.Type value = new Element.Type(0.94 * em, true, Ink.TEXT, false);
        Element.Type small = new Element.Type(0.68 * em, false, Ink.QUIET, false);
        double top = y + 0.15 * em;
        Typesetter names = new Typesetter("row");
        names.paragraph(row.name(), 0, nameWidth() - 0.4 * em, name);
        elements.addAll(new Block(names.elements(), 0).at(new Xy(0, top)));
        double lowest = top + names.height();
        for (int i = 0; i < row.cells().size(); i++) {
            Note.Cell cell = row.cells().get(i);
            double at = top + Typesetter.baseline(value);
            elements.add(Typesetter.textEndingAt(KIND, cell.value(), new Xy(right(i), at), value));
            double below = top + Lettering.LINE * value.size();
            for (String line : Typesetter.wrapped(cell.small(), columnWidth() - 0.3 * em, small)) {
                elements.add(Typesetter.textEndingAt(
                        "uncertainty", line, new Xy(right(i), below + Typesetter.baseline(small) - 0.15 * em), small));
                below += 1.1 * small.size();
            }
            lowest = Math.max(lowest, below);
        }
        elements.removeIf(
                element -> element instanceof Element.Text text && text.text().isEmpty());
        y = lowest + 0.1 * em;
    }

    private void rule() {
        Pen thin = new Pen(Ink.QUIET, 0.04 * em, List.of(), 0, 0);
        elements.add(new Element.Trace("rule", List.of(new Xy(0, y), new Xy(width, y)), false, thin));
    }

    private double nameWidth() {
        return width - columnWidth() * table.columns().size();
    }

    private double columnWidth() {
        return width * (table.columns().size() == 1 ? 0.4 : 0.235);
    }

    private double right(int column) {
        return nameWidth() + columnWidth() * (column + 1);
    }
}
