// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import dev.plumbline.record.SiteRules;

/**
 * Where the assistant keeps the log while the operator needles: one touch for what happens, the next step for a needle that
 * is not seen, volumes and doses so far.
 */
public final class LogPage {
    private LogPage() {}

    /** The page; which case it is of, its module reads from the address. */
    public static String html(SiteRules site) {
        return Layout.page("log", "Log", "log.js", html -> {
            Layout.patient(html);
            html.element("h1", "Log", "class", "heard");
            html.element("p", "", "id", "problem", "class", "problem", "role", "alert", "hidden", "");
            html.open("p", "id", "choose", "hidden", "")
                    .text("Which case? Choose it in ")
                    .element("a", "Cases and records", "href", "list")
                    .text(".")
                    .end();
            html.open("div", "id", "bedside", "class", "bedside", "hidden", "");
            now(html);
            html.open("div", "class", "hands");
            new EntriesPart(site.blocks()).write(html);
            html.end().open("div", "class", "eyes");
            new SightPart().write(html);
            soFar(html);
            html.end().end();
            html.open("div", "id", "beside", "class", "beside", "hidden", "");
            new PreparationPart(site).write(html);
            html.end();
        });
    }

    private static void now(Html html) {
        html.open("section", "class", "now", "aria-label", "Now");
        html.open("dl", "class", "clocks");
        clock(html, "Time", "clock");
        clock(html, "Since the stop moment", "since-stop-moment");
        clock(html, "Since the puncture", "since-puncture");
        html.end();
        html.open("div", "class", "standing-of-entries");
        html.element("p", "", "id", "waiting", "class", "waiting", "role", "status");
        html.element("p", "", "id", "said", "class", "heard", "role", "status");
        html.element("button", "Undo", "type", "button", "id", "undo", "class", "big", "disabled", "");
        html.end();
        html.open("div", "class", "who");
        Fields.text(html, "entered-by", "Entered by, as in Roe^Al");
        html.element(
                "button",
                "Enter later",
                "type",
                "button",
                "id",
                "later",
                "class",
                "big",
                "aria-pressed",
                "false",
                "aria-controls",
                "later-fields");
        html.open("div", "id", "later-fields", "hidden", "");
        html.open("div").element("label", "It happened at", "for", "later-time");
        html.empty("input", "type", "datetime-local", "id", "later-time", "step", "1");
        html.end();
        html.element(
                "p",
                "Entries now get this time and are marked as entered later.",
                "id",
                "later-words",
                "class",
                "hint");
        html.end().end();
        html.open("section", "id", "refused", "aria-labelledby", "refused-title", "class", "refused", "hidden", "");
        html.element("h2", "Not taken", "id", "refused-title");
        html.open("ul", "id", "refused-list").end().end();
        html.open("p", "id", "closed", "class", "problem", "hidden", "").end();
        html.end();
    }

    private static void clock(Html html, String name, String id) {
        html.open("div").element("dt", name).open("dd");
        html.element("span", "--:--", "id", id, "role", "timer").end().end();
    }

    private static void soFar(Html html) {
        html.open("section", "aria-labelledby", "doses-title", "id", "doses");
        html.element("h2", "Volumes and doses so far", "id", "doses-title");
        html.element("p", "", "id", "not-counted", "class", "problem", "hidden", "");
        html.open("dl", "id", "volumes", "class", "facts").end();
        html.open("table", "id", "session-dose", "class", "numbers", "hidden", "");
        html.element("caption", "Local anaesthetic of the session");
        html.open("thead").open("tr");
        html.element("th", "Drug", "scope", "col")
                .element("th", "Given", "scope", "col")
                .element("th", "Drawn up", "scope", "col");
        html.end().end().open("tbody").end().end();
        html.open("ul", "id", "dose-words", "class", "plain").end();
        html.end();
        html.open("section", "aria-labelledby", "entries-title").element("h2", "Events", "id", "entries-title");
        html.open("ul", "id", "contradictions", "class", "plain", "aria-label", "What does not fit together")
                .end();
        html.element("p", "No entry yet.", "id", "no-entries", "class", "none");
        html.open("ol", "id", "entries", "class", "entries", "reversed", "").end();
        html.end();
    }
}
