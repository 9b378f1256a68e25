// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.readout;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Several SVG documents below each other in one. */
public final class StackedSvg {
    private static final double GAP = 16;
    private static final Pattern SIZE =
            Pattern.compile("^<svg xmlns=\"[^\"]*\"[^>]*? width=\"([0-9.]+)\" height=\"([0-9.]+)\"");

    private StackedSvg() {}

    /**
     * All of them in one document.
     *
     * @param drawings each begins with its root element, which states width and height in pixels
     */
    public static String of(List<String> drawings) {
        if (drawings.size() == 1) {
            return drawings.get(0);
        }
        StringBuilder inside = new StringBuilder();
        double width = 0;
        double height = 0;
        for (String drawing : drawings) {
            Matcher size = SIZE.matcher(drawing);
            if (!size.find()) {
                throw new IllegalArgumentException("The drawing does not begin as it should.");
            }
            inside.append("<svg y=\"").append(number(height)).append('"').append(drawing.substring("<svg".length()));
            width = Math.max(width, Double.parseDouble(size.group(1)));
            height += Double.parseDouble(size.group(2)) + GAP;
        }
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + number(width) + "\" height=\""
                + number(Math.max(0, height - GAP)) + "\">\n" + inside + "</svg>\n";
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
