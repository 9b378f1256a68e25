// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

/** What the service computes from the marks, in words and numbers, and what a person chooses. */
final class PlanPart {
    void write(Html html) {
        comparison(html);
        plan(html);
        choices(html);
    }

    private static void plan(Html html) {
        html.open("section", "id", "plan", "aria-labelledby", "plan-title", "aria-busy", "false");
        html.element("h2", "Plan", "id", "plan-title");
        html.element("p", "", "id", "plan-standing", "class", "standing", "role", "status");
        html.element("p", "", "id", "plan-words", "class", "words");
        html.open("svg", "id", "side-view", "class", "side-view", "role", "img", "hidden", "")
                .end();
        html.open("table", "id", "plan-numbers", "class", "numbers", "hidden", "");
        html.element("caption", "Planned, with the expanded uncertainty (k = 2)");
        html.open("tbody").end().end();
        html.open("table", "id", "clearances", "class", "numbers", "hidden", "");
        html.element("caption", "Clearance of the path from what was marked");
        html.open("tbody").end().end();
        html.end();
    }

    private static void comparison(Html html) {
        html.open("section", "id", "comparison", "aria-labelledby", "comparison-title", "hidden", "");
        html.element("h2", "Plan and observation", "id", "comparison-title");
        html.open("table", "id", "comparison-numbers", "class", "numbers");
        html.element("caption", "Plan, observation and deviation, with the expanded uncertainty (k = 2)");
        html.open("thead").open("tr");
        for (String column : new String[] {"", "plan", "observed", "deviation"}) {
            if (column.isEmpty()) {
                html.element("td", "");
            } else {
                html.element("th", column, "scope", "col");
            }
        }
        html.end().end().open("tbody").end().end();
        html.element("p", "", "id", "observation-notes", "class", "hint");
        html.open("div", "class", "fields");
        Fields.select(html, "phase", "Phase", new String[][] {
            {"", "not stated"},
            {"finalTip", "final tip"},
            {"duringInjection", "during injection"},
            {"afterSpread", "after spread"},
            {"catheter", "catheter"},
            {"practice", "practice"}
        });
        Fields.number(html, "puncture", "Puncture from the beam, measured on the skin, mm", "0", "0.5");
        html.end();
        Fields.check(html, "tip-is-tip", "The mark is the tip: I saw it move");
        html.open("div", "class", "buttons");
        html.element("button", "Keep this observation", "type", "button", "id", "keep-observation", "class", "main");
        html.element("button", "Another observation", "type", "button", "id", "next-observation", "disabled", "");
        html.end();
        html.element("p", "", "id", "observations-kept", "role", "status");
        html.end();
    }

    private static void choices(Html html) {
        html.open("section", "id", "choices", "aria-labelledby", "choices-title");
        html.element("h2", "Path and needle", "id", "choices-title");
        html.open("div", "class", "fields");
        Fields.select(html, "approach", "Approach", new String[][] {
            {"", "not stated"}, {"inPlane", "in-plane"}, {"outOfPlane", "out-of-plane"}
        });
        Fields.select(html, "needle-side", "Side of the image the needle comes from", new String[][] {
            {"", "not stated"}, {"left", "left"}, {"right", "right"}
        });
        Fields.select(html, "needle", "Needle", new String[][] {{"", "not stated"}});
        Fields.select(html, "target-kind", "Kind of target", new String[][] {
            {"", "not stated"},
            {"nearNerve", "beside a nerve"},
            {"fascialPlane", "fascial plane"},
            {"perivascular", "beside a vessel"},
            {"catheterSpace", "space for a catheter"}
        });
        Fields.number(html, "band-low", "Band of angles, from °", "1", "1");
        Fields.number(html, "band-high", "Band of angles, to °", "1", "1");
        Fields.number(html, "face", "Length of the probe's face, mm", "1", "0.1");
        Fields.number(html, "scale-mm", "Distance between the two points of the scale, mm", "1", "1");
        Fields.number(html, "entry", "Chosen entry from midpoint, mm", "0", "0.5");
        Fields.number(html, "chosen-puncture", "Chosen puncture from the beam, mm", "0", "0.5");
        html.end();
        html.open("div", "class", "buttons");
        html.element("button", "Choose the proposed path", "type", "button", "id", "choose-proposed", "class", "main");
        html.element("button", "Propose again", "type", "button", "id", "propose");
        html.end();
        html.element("p", "", "id", "needle-words", "class", "hint");
        html.end();
    }
}
