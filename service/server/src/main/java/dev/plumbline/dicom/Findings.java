// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;

/** Collects what a check finds, and knows where every item stands. */
final class Findings {
    private final IdentityHashMap<ContentItem, String> places = new IdentityHashMap<>();
    private final List<CheckReport.Line> lines = new ArrayList<>();

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

    CheckReport report() {
        return new CheckReport(lines);
    }
}
