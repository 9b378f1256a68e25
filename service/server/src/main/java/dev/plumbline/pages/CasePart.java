// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import dev.plumbline.procedure.BlockList;

/** The marks as a list, what the case is about, and the steps from a case to a signed record. */
record CasePart(BlockList blocks) {
    void write(Html html) {
        html.open("section", "aria-labelledby", "marks-title").element("h2", "Marks", "id", "marks-title");
        html.element("p", "Nothing is marked yet.", "id", "no-marks", "class", "none");
        html.open("ul", "id", "marks", "class", "marks").end();
        html.end();
        about(html);
        record(html);
    }

    private void about(Html html) {
        html.open("section", "aria-labelledby", "case-title").element("h2", "Case", "id", "case-title");
        html.open("div", "class", "fields");
        Fields.select(html, "laterality", "Patient's side", new String[][] {
            {"", "not stated"}, {"right", "right"}, {"left", "left"}, {"midline", "midline"}
        });
        String[][] names = new String[blocks.blocks().size() + 1][];
        names[0] = new String[] {"", "not stated"};
        for (int i = 1; i < names.length; i++) {
            BlockList.Block block = blocks.blocks().get(i - 1);
            names[i] = new String[] {block.id(), block.name()};
        }
        Fields.select(html, "block", "Block", names);
        Fields.text(html, "operator", "Operator, as in Doe^Jo");
        html.end();
        html.open("div", "class", "buttons");
        html.element("button", "Keep the case", "type", "button", "id", "keep", "class", "main");
        html.end();
        html.element("p", "Not kept yet.", "id", "kept", "role", "status");
        html.element("a", "Log of this case", "id", "to-log", "class", "action", "href", "log", "hidden", "");
        html.element("p", "", "id", "keep-problem", "class", "problem", "role", "alert", "hidden", "");
        html.element("button", "Load what is kept", "type", "button", "id", "reload", "hidden", "");
        html.end();
    }

    private static void record(Html html) {
        html.open("section", "aria-labelledby", "record-title").element("h2", "Record", "id", "record-title");
        html.element("p", "A draft stays here; a signed record goes into the archive.", "id", "record-standing");
        html.open("div", "class", "buttons");
        html.element("button", "Draft the record", "type", "button", "id", "draft", "class", "main", "disabled", "");
        html.element("a", "Read the draft", "id", "read", "href", "list", "target", "_blank", "hidden", "");
        html.end();
        html.open("form", "id", "signing", "hidden", "", "aria-labelledby", "signing-title");
        html.element("h3", "Signature", "id", "signing-title");
        html.open("div", "class", "fields");
        Fields.text(html, "signer", "Name, as in Doe^Jo");
        Fields.text(html, "signer-role", "Role, such as performer");
        Fields.text(html, "signer-organization", "Organization");
        html.end();
        html.open("div", "id", "missing").end();
        html.element("button", "Sign the record", "type", "submit", "id", "sign", "class", "main");
        html.end();
        html.element("p", "", "id", "record-problem", "class", "problem", "role", "alert", "hidden", "");
        html.open("ul", "id", "record-links", "class", "links", "hidden", "").end();
        html.end();
    }
}
