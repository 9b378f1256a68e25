// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.readout;

/** The one place where text becomes part of an HTML document. */
public final class HtmlText {
    private HtmlText() {}

    /**
     * Text as text, whatever was typed, between tags and in quoted attributes; control characters that HTML does not allow
     * become spaces.
     */
    public static String escaped(String text) {
        StringBuilder safe = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> safe.appendCodePoint(isForbidden(c) ? ' ' : c);
            }
        });
        return safe.toString();
    }

    private static boolean isForbidden(int c) {
        boolean control = Character.isISOControl(c) && c != '\n' && c != '\t';
        return control || (c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE);
    }
}
