// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

/** The frame with its marks, and what moves them or the view. */
final class StagePart {
    void write(Html html) {
        html.open("section", "class", "stage", "aria-label", "Frame and marks");
        html.open("div", "class", "bar", "role", "group", "aria-label", "What is marked");
        pressed(html, "step-plan", "Plan", true);
        pressed(html, "step-observation", "Observation", false);
        button(html, "other-frame", "Another frame");
        html.end();
        html.open("div", "id", "tools", "class", "bar tools", "role", "group", "aria-label", "Mark to place")
                .end();
        html.element("p", "", "id", "hint", "class", "hint", "role", "status");
        html.open("div", "class", "view", "id", "view");
        html.open(
                        "svg",
                        "id",
                        "frame",
                        "tabindex",
                        "0",
                        "role",
                        "application",
                        "aria-label",
                        "Frame. Enter places the chosen mark in the middle, arrow keys move the view, plus and minus zoom.")
                .end();
        html.open("svg", "id", "loupe", "class", "loupe", "aria-hidden", "true", "hidden", "")
                .end();
        html.end();
        html.open("div", "class", "bar", "role", "group", "aria-label", "View");
        button(html, "zoom-out", "Smaller");
        button(html, "zoom-in", "Larger");
        button(html, "zoom-frame", "Frame");
        button(html, "zoom-path", "Whole path");
        button(html, "undo", "Undo");
        html.end();
        html.open("div", "id", "cine", "class", "bar cine", "role", "group", "aria-label", "Frames", "hidden", "");
        button(html, "cine-back", "Previous");
        html.element("label", "Frame", "for", "cine-number", "class", "heard");
        html.empty("input", "type", "range", "id", "cine-number", "min", "1", "max", "1", "value", "1");
        button(html, "cine-next", "Next");
        html.element("output", "", "id", "cine-text", "for", "cine-number");
        button(html, "cine-marks", "Back to the marked frame");
        html.end();
        html.element("p", "", "id", "scale", "class", "hint");
        html.end();
    }

    private static void button(Html html, String id, String text) {
        html.element("button", text, "type", "button", "id", id);
    }

    private static void pressed(Html html, String id, String text, boolean on) {
        html.element("button", text, "type", "button", "id", id, "aria-pressed", String.valueOf(on));
    }
}
