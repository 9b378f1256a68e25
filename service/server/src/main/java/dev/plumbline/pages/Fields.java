// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

/** Fields with their labels, each named by its id alone. */
final class Fields {
    private Fields() {}

    static void text(Html html, String id, String label) {
        html.open("div").element("label", label, "for", id);
        html.empty("input", "type", "text", "id", id, "maxlength", "64", "autocomplete", "off", "spellcheck", "false");
        html.end();
    }

    static void number(Html html, String id, String label, String least, String step) {
        html.open("div").element("label", label, "for", id);
        html.empty("input", "type", "number", "id", id, "min", least, "step", step, "inputmode", "decimal");
        html.end();
    }

    /** @param options value and words of each */
    static void select(Html html, String id, String label, String[][] options) {
        html.open("div").element("label", label, "for", id).open("select", "id", id);
        for (String[] option : options) {
            html.element("option", option[1], "value", option[0]);
        }
        html.end().end();
    }

    static void check(Html html, String id, String label) {
        html.open("p", "class", "check").empty("input", "type", "checkbox", "id", id);
        html.element("label", label, "for", id).end();
    }
}
