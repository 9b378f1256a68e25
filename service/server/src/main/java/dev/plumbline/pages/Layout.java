// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import dev.plumbline.record.Cautions;
import java.util.List;
import java.util.function.Consumer;

/**
 * What all pages share: title, skip link, navigation, the switch for a dark room, the place for what the page has to say
 * at once, and the cautions. Addresses are relative, so that they hold behind a proxy that moves the root; every page lies
 * in one folder, its files in {@code files/} below, the interface in {@code ../v1/}.
 */
final class Layout {
    private static final List<Link> LINKS =
            List.of(new Link("list", "Cases and records"), new Link("mark", "Mark a frame"));

    private Layout() {}

    private record Link(String address, String text) {}

    /**
     * A whole page.
     *
     * @param address of the page itself, such as {@code list}
     * @param script name of its ES module; blank where it has none
     */
    static String page(String address, String title, String script, Consumer<Html> content) {
        Html html = Html.document();
        html.open("html", "lang", "en").open("head");
        html.empty("meta", "charset", "utf-8")
                .empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1")
                .empty("meta", "name", "color-scheme", "content", "light dark");
        html.element("title", title + " - Plumbline");
        html.empty("link", "rel", "icon", "href", "files/mark.svg", "type", "image/svg+xml");
        html.empty("link", "rel", "stylesheet", "href", "files/pages.css");
        html.element("script", "", "src", "files/dim.js");
        if (!script.isBlank()) {
            html.element("script", "", "type", "module", "src", "files/" + script);
        }
        html.end().open("body", "data-page", address);
        html.element("a", "Skip to the content", "class", "skip", "href", "#content");
        header(html, address);
        html.open("main", "id", "content", "tabindex", "-1").add(content).end();
        footer(html);
        return html.end().end().toString();
    }

    private static void header(Html html, String address) {
        html.open("header", "class", "top").element("span", "Plumbline", "class", "name");
        html.open("nav", "aria-label", "Pages").open("ul");
        for (Link link : LINKS) {
            html.open("li");
            if (link.address().equals(address)) {
                html.element("a", link.text(), "href", link.address(), "aria-current", "page");
            } else {
                html.element("a", link.text(), "href", link.address());
            }
            html.end();
        }
        html.end().end();
        html.element("button", "Dark room", "type", "button", "id", "dim", "aria-pressed", "false");
        html.end();
        html.element("p", "", "id", "connection", "class", "connection", "role", "status");
    }

    private static void footer(Html html) {
        html.open("footer", "class", "cautions")
                .element("h2", "Cautions")
                .element("p", Cautions.text())
                .end();
    }

    /**
     * Whose the page is, and which side: filled by {@code patient.js} from the frame and the case, said in words and never
     * by a colour.
     */
    static void patient(Html html) {
        html.open("section", "class", "patient", "id", "patient", "aria-label", "Patient");
        html.open("dl");
        fact(html, "Patient", "patient-name");
        fact(html, "Patient ID", "patient-id");
        fact(html, "Born", "patient-born");
        fact(html, "Patient's side", "patient-side");
        html.end().end();
    }

    private static void fact(Html html, String name, String id) {
        html.open("div", "class", id)
                .element("dt", name)
                .element("dd", "not stated", "id", id)
                .end();
    }
}
