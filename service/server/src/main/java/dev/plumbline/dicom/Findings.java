// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Collects what a check finds, and knows where every item stands. */
final class Findings {
    private final IdentityHashMap<ContentItem, String> places = new IdentityHashMap<>();
    private final Map<TemplateRow, CheckReport.Row> rows = new LinkedHashMap<>();
    private final List<CheckReport.Line> lines = new ArrayList<>();

    /** Of an object without a content tree. */
    Findings() {}

    Findings(ContentItem root) {
        place(root, "1");
    }

    private void place(ContentItem item, String position) {
        places.put(
                item,
                position + " "
                        + item.name().map(Code::meaning).orElse(item.value().valueType()));
        int number = 1;
        for (ContentItem child : item.children()) {
            place(child, position + "." + number);
            number++;
        }
    }

    void at(ContentItem item, String text) {
        lines.add(new CheckReport.Line(places.getOrDefault(item, "?"), text));
    }

    void at(int tag, String text) {
        lines.add(new CheckReport.Line(Fault.name(tag), text));
    }

    void at(String place, String text) {
        lines.add(new CheckReport.Line(place, text));
    }

    /** Notes which row of a template an item was taken for. */
    void matched(ContentItem item, TemplateRow row) {
        rows.merge(
                row,
                new CheckReport.Row(row.title(), 1, places.getOrDefault(item, "?")),
                (first, again) -> first.once());
    }

    CheckReport report() {
        return new CheckReport(lines, List.copyOf(rows.values()));
    }
}
