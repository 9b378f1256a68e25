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
            html.element("h1", "Mark a frame");
        });
    }
}
