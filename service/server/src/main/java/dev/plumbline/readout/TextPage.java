// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.readout;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A record as plain text, one line for each thing said, lines ended by a line feed. */
public final class TextPage {
    private static final int WIDTH = 56;
    private static final int INDENT = 2;

    private TextPage() {}

    public static String text(Readout readout) {
        List<String> lines = new ArrayList<>();
        lines.add(readout.title() + ", " + readout.standing());
        readout.head().forEach(line -> lines.add(line(0, line)));
        for (Readout.Section section : readout.sections()) {
            lines.add("");
            lines.add(section.heading());
            section.lines().forEach(line -> lines.add(line(INDENT, line)));
        }
        if (!readout.cautions().isEmpty()) {
            lines.add("");
            lines.add(readout.cautions());
        }
        return String.join("\n", lines) + "\n";
    }

    private static String line(int indent, Readout.Line line) {
        return String.format(
                Locale.ROOT, "%s%-" + (WIDTH - indent) + "s %s", " ".repeat(indent), line.name(), line.value());
    }
}
