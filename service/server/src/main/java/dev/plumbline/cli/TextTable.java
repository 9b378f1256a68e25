// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import java.util.ArrayList;
import java.util.List;

/** Columns of text, each as wide as its widest cell; the first column left, the others right. */
final class TextTable {
    private static final String GAP = "  ";

    private final List<List<String>> rows = new ArrayList<>();

    TextTable row(List<String> cells) {
        rows.add(List.copyOf(cells));
        return this;
    }

    String text() {
        StringBuilder text = new StringBuilder();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < row.size(); i++) {
                String pad = " ".repeat(Math.max(0, width(i) - length(row.get(i))));
                boolean left = i == 0 || i == row.size() - 1;
                line.append(i == 0 ? "" : GAP).append(left ? row.get(i) + pad : pad + row.get(i));
            }
            text.append(line.toString().stripTrailing()).append('\n');
        }
        return text.toString().stripTrailing();
    }

    private int width(int column) {
        return rows.stream()
                .filter(row -> row.size() > column)
                .mapToInt(row -> length(row.get(column)))
                .max()
                .orElse(0);
    }

    private static int length(String cell) {
        return cell.codePointCount(0, cell.length());
    }
}
