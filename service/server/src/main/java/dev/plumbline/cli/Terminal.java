// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.problem.Problem;
import dev.plumbline.record.Cautions;
import java.io.PrintWriter;

/** What the commands write to. Control characters of what others wrote never reach the terminal. */
public final class Terminal {
    private static final int CAUTION_WIDTH = 100;

    private final PrintWriter out;
    private final PrintWriter err;

    public Terminal(PrintWriter out, PrintWriter err) {
        this.out = out;
        this.err = err;
    }

    PrintWriter out() {
        return out;
    }

    PrintWriter err() {
        return err;
    }

    /** Exactly one JSON document. */
    void json(JsonNode json) {
        out.println(json.toPrettyString());
        out.flush();
    }

    void line(String text) {
        out.println(printable(text));
        out.flush();
    }

    /** Something to know that is no result. */
    void note(String text) {
        err.println(printable(text));
        err.flush();
    }

    /** Which field, what is wrong with it, and what to do. */
    void refusal(Problem problem) {
        String field = problem.pointer().isEmpty() ? "" : problem.pointer() + ": ";
        note("plumbline: " + field + problem.detail());
        note("  " + problem.remedy());
    }

    void cautions() {
        line("");
        line(wrapped(Cautions.text()));
    }

    static String wrapped(String text) {
        StringBuilder lines = new StringBuilder();
        int column = 0;
        for (String word : text.split(" ", -1)) {
            if (column > 0 && column + 1 + word.length() > CAUTION_WIDTH) {
                lines.append('\n');
                column = 0;
            } else if (column > 0) {
                lines.append(' ');
                column++;
            }
            lines.append(word);
            column += word.length();
        }
        return lines.toString();
    }

    /** Escape sequences, bells and the like shown as such; line ends stay. */
    static String printable(String text) {
        StringBuilder clean = new StringBuilder();
        text.codePoints().forEach(c -> {
            if ((Character.isISOControl(c) && c != '\n') || turnsText(c)) {
                clean.append(String.format("\\u%04x", c));
            } else {
                clean.appendCodePoint(c);
            }
        });
        return clean.toString();
    }

    /** Characters that change the direction of the text around them. Source: Unicode Standard Annex 9, 2. */
    private static boolean turnsText(int c) {
        return (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
    }
}
