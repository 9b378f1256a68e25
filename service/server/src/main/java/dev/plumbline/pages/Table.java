// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.function.BiConsumer;

/**
 * Rows of an answer as a table; on a narrow screen each row stands as a block of its own with the columns' names.
 *
 * @param caption what the rows are
 * @param columns in their order; the first one names the row
 */
record Table(String caption, List<Column> columns) {
    Table {
        columns = List.copyOf(columns);
    }

    /** One column: its name, and what it writes into a cell. */
    record Column(String name, BiConsumer<Html, JsonNode> cell) {}

    /** Writes the table, or says that there is nothing. */
    void write(Html html, JsonNode rows, String none) {
        if (rows.isEmpty()) {
            html.element("p", none, "class", "none");
            return;
        }
        html.open("table", "class", "rows").element("caption", caption);
        html.open("thead").open("tr");
        columns.forEach(column -> html.element("th", column.name(), "scope", "col"));
        html.end().end().open("tbody");
        for (JsonNode row : rows) {
            html.open("tr");
            for (int i = 0; i < columns.size(); i++) {
                cell(html, columns.get(i), row, i == 0);
            }
            html.end();
        }
        html.end().end();
    }

    private static void cell(Html html, Column column, JsonNode row, boolean names) {
        if (names) {
            html.open("th", "scope", "row", "data-name", column.name());
        } else {
            html.open("td", "data-name", column.name());
        }
        column.cell().accept(html, row);
        html.end();
    }
}
