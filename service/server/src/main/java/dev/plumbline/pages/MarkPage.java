// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import dev.plumbline.procedure.BlockList;

/** Where a frame is marked, the plan seen while it is, the needle observed, and the record drafted and signed. */
public final class MarkPage {
    private MarkPage() {}

    /** The page; which frame or case it is of, its module reads from the address. */
    public static String html(BlockList blocks) {
        return Layout.page("mark", "Mark a frame", "mark.js", html -> {
            Layout.patient(html);
            html.element("h1", "Mark a frame", "class", "heard");
            html.element("p", "", "id", "problem", "class", "problem", "role", "alert", "hidden", "");
            choosing(html);
            html.open("div", "id", "work", "class", "work", "hidden", "");
            new StagePart().write(html);
            html.open("div", "class", "panel");
            new PlanPart().write(html);
            new CasePart(blocks).write(html);
            html.end().end();
        });
    }

    private static void choosing(Html html) {
        html.open("section", "id", "choose", "aria-labelledby", "choose-title");
        html.element("h2", "Choose a frame", "id", "choose-title");
        html.element("label", "A DICOM file of this device", "for", "file");
        html.empty("input", "type", "file", "id", "file", "accept", ".dcm,application/dicom");
        html.element("p", "", "id", "sending", "role", "status");
        html.element("h3", "Frames held here");
        html.element("p", "", "id", "no-frames");
        html.open("ul", "id", "frames", "class", "frames").end();
        html.element("button", "Back to the frame", "type", "button", "id", "choose-back", "hidden", "");
        html.end();
    }
}
