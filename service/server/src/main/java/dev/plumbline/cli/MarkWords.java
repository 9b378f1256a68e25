// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.document.StatedMarks;
import dev.plumbline.geometry.NamedMark;
import dev.plumbline.geometry.RepeatedMarks;
import dev.plumbline.record.CaseDocument;
import java.util.List;
import java.util.Locale;

/** Marks that were set several times, in words. */
final class MarkWords {
    private MarkWords() {}

    /** A table; empty where every mark was set once. */
    static String repeated(CaseDocument document) {
        List<NamedMark> repeated = StatedMarks.repeated(document);
        if (repeated.isEmpty()) {
            return "";
        }
        TextTable table = new TextTable()
                .row(List.of("Marked several times", "marks", "people", "spread (px)", "mean known to (px)", ""));
        for (NamedMark mark : repeated) {
            RepeatedMarks spread = mark.at().spread().orElseThrow();
            table.row(List.of(
                    mark.pointer(),
                    String.valueOf(spread.marks()),
                    String.valueOf(spread.persons()),
                    hundredths(spread.sdColumnPx()) + ", " + hundredths(spread.sdRowPx()),
                    hundredths(spread.markPx(RepeatedMarks.Used.MEAN_OF_MARKS)),
                    ""));
        }
        return table.text() + "\n"
                + Terminal.wrapped(
                        "Spread: standard deviation of one mark along columns and rows. The mean is used; what"
                                + " it is known to goes into every uncertainty in place of the general one.");
    }

    private static String hundredths(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
