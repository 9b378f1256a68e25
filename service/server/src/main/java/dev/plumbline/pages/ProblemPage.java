// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import dev.plumbline.problem.Problem;

/** What cannot be shown, and what to do about it. */
public final class ProblemPage {
    private ProblemPage() {}

    /** The page. */
    public static String html(Problem problem) {
        return Layout.page(
                "problem",
                "Not shown",
                "",
                html -> html.element("h1", "Not shown")
                        .element("p", problem.detail() + " " + problem.remedy(), "class", "problem", "role", "alert")
                        .open("p")
                        .element("a", "Cases and records", "class", "action", "href", "list")
                        .end());
    }
}
