// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.geometry.NamedMark;
import dev.plumbline.geometry.RepeatedMarks;
import dev.plumbline.record.CaseDocument;

/** What each mark that was set several times is taken for, and how far its marks spread. */
final class RepeatedMarksJson {
    private final AnswerWriter out;

    RepeatedMarksJson(AnswerWriter out) {
        this.out = out;
    }

    void field(CaseDocument document) {
        out.objects("repeatedMarks", StatedMarks.repeated(document), this::one);
    }

    private void one(NamedMark mark) {
        RepeatedMarks spread = mark.at().spread().orElseThrow();
        out.put("pointer", mark.pointer())
                .put("n", spread.marks())
                .put("persons", spread.persons())
                .object(
                        "mean",
                        () -> out.put("column", mark.at().column())
                                .put("row", mark.at().row()))
                .put("sdColumnPx", spread.sdColumnPx())
                .put("sdRowPx", spread.sdRowPx())
                .put("oneMarkUncertaintyPx", spread.markPx(RepeatedMarks.Used.ONE_MARK))
                .put("standardUncertaintyPx", spread.markPx(RepeatedMarks.Used.MEAN_OF_MARKS));
    }
}
