// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import dev.plumbline.readout.HtmlText;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.Consumer;

/** HTML while it is written: whatever goes in as text or attribute is escaped, and what was opened is closed in order. */
final class Html {
    private final StringBuilder out = new StringBuilder();
    private final Deque<String> open = new ArrayDeque<>();

    /** The beginning of a whole document. */
    static Html document() {
        Html html = new Html();
        html.out.append("<!DOCTYPE html>\n");
        return html;
    }

    /**
     * Opens an element.
     *
     * @param attributes names and values by turns
     */
    Html open(String tag, String... attributes) {
        empty(tag, attributes);
        open.push(tag);
        return this;
    }

    /** An element that has no content and no end, such as {@code input}. */
    Html empty(String tag, String... attributes) {
        if (attributes.length % 2 != 0) {
            throw new IllegalArgumentException("An attribute of " + tag + " has no value.");
        }
        out.append('<').append(tag);
        for (int i = 0; i < attributes.length; i += 2) {
            out.append(' ')
                    .append(attributes[i])
                    .append("=\"")
                    .append(HtmlText.escaped(attributes[i + 1]))
                    .append('"');
        }
        out.append('>');
        return this;
    }

    /** Closes what was opened last. */
    Html end() {
        out.append("</").append(open.pop()).append(">\n");
        return this;
    }

    Html text(String text) {
        out.append(HtmlText.escaped(text));
        return this;
    }

    /** An element with nothing but text in it. */
    Html element(String tag, String text, String... attributes) {
        return open(tag, attributes).text(text).end();
    }

    /** Whatever a part of a page writes. */
    Html add(Consumer<Html> part) {
        part.accept(this);
        return this;
    }

    @Override
    public String toString() {
        if (!open.isEmpty()) {
            throw new IllegalStateException("Not closed: " + open);
        }
        return out.toString();
    }
}
