// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.readout;

import java.util.List;

/**
 * A record as one page for a browser that stands on its own: no script, nothing fetched from anywhere, drawings inside it;
 * it prints on A4.
 */
public final class HtmlPage {
    private static final String STYLE = """
        :root{color-scheme:light}
        body{font:15px/1.45 "DejaVu Sans",Verdana,Arial,sans-serif;color:#15181b;background:#fff;margin:2rem auto;\
        max-width:62rem;padding:0 1rem}
        h1{font-size:1.5rem;margin:0 0 .3rem}
        h2{font-size:1.05rem;margin:1.6rem 0 .3rem;border-bottom:1px solid #555e66}
        .standing{display:inline-block;border:1px solid #15181b;padding:0 .6rem;margin:0 0 .8rem}
        table{border-collapse:collapse;width:100%}
        th,td{text-align:left;vertical-align:top;padding:.12rem .5rem .12rem 0;font-weight:normal;\
        overflow-wrap:anywhere}
        th{width:48%;color:#40474e}
        td{white-space:pre-line}
        figure{margin:1rem 0;break-inside:avoid}
        figure svg{max-width:100%;height:auto}
        .cautions{margin-top:1.8rem;border-top:2px solid #15181b;padding-top:.6rem}
        .uid{color:#555e66;font-size:.8rem;overflow-wrap:anywhere}
        @media print{@page{size:A4;margin:14mm}body{font-size:9pt;margin:0;max-width:none;padding:0}\
        h2{break-after:avoid}tr{break-inside:avoid}}
        """;

    private final StringBuilder out = new StringBuilder();

    private HtmlPage() {}

    /**
     * The record as a whole HTML document.
     *
     * @param drawings whole SVG documents, trusted as they are
     */
    public static String text(Readout readout, List<String> drawings) {
        return new HtmlPage().page(readout, drawings);
    }

    private String page(Readout readout, List<String> drawings) {
        String title = HtmlText.escaped(readout.title() + ", " + readout.standing());
        out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
                .append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; ")
                .append("style-src 'unsafe-inline'; img-src data:\">\n")
                .append("<meta name=\"viewport\" content=\"width=device-width\">\n<title>")
                .append(title)
                .append("</title>\n<style>\n")
                .append(STYLE)
                .append("</style>\n</head>\n<body>\n<h1>")
                .append(HtmlText.escaped(readout.title()))
                .append("</h1>\n<p class=\"standing\">")
                .append(HtmlText.escaped(readout.standing()))
                .append("</p>\n");
        table(readout.head());
        drawings.forEach(drawing -> out.append("<figure>\n").append(drawing).append("</figure>\n"));
        for (Readout.Section section : readout.sections()) {
            out.append("<h2>").append(HtmlText.escaped(section.heading())).append("</h2>\n");
            table(section.lines());
        }
        if (!readout.cautions().isEmpty()) {
            out.append("<p class=\"cautions\">")
                    .append(HtmlText.escaped(readout.cautions()))
                    .append("</p>\n");
        }
        return out.append("<p class=\"uid\">Structured report ")
                .append(HtmlText.escaped(readout.uid()))
                .append("</p>\n</body>\n</html>\n")
                .toString();
    }

    private void table(List<Readout.Line> lines) {
        if (lines.isEmpty()) {
            return;
        }
        out.append("<table>\n");
        for (Readout.Line line : lines) {
            out.append("<tr><th scope=\"row\">")
                    .append(HtmlText.escaped(line.name()))
                    .append("</th><td>")
                    .append(HtmlText.escaped(line.value()))
                    .append("</td></tr>\n");
        }
        out.append("</table>\n");
    }
}
