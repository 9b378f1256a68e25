// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.awt.Font;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.font.TextLayout;
import java.awt.geom.AffineTransform;

/** Measures and shapes text in the platform's sans-serif font, at one size, so that widths scale exactly. */
final class Lettering {
    /** Share of the size above and below the base line that Latin letters of common sans-serif fonts need. */
    static final double ASCENT = 0.78;

    static final double DESCENT = 0.24;
    static final double LINE = 1.28;

    private static final float MEASURED_AT = 100;
    private static final FontRenderContext EXACT = new FontRenderContext(null, true, true);
    private static final Font PLAIN = new Font(Font.SANS_SERIF, Font.PLAIN, 1).deriveFont(MEASURED_AT);
    private static final Font BOLD = new Font(Font.SANS_SERIF, Font.BOLD, 1).deriveFont(MEASURED_AT);

    private Lettering() {}

    static double width(String text, double size, boolean bold) {
        return text.isEmpty() ? 0 : layout(text, bold).getAdvance() * size / MEASURED_AT;
    }

    /** Outline of a text that starts at the given point of the base line. */
    static Shape outline(Element.Text text) {
        AffineTransform placed =
                AffineTransform.getTranslateInstance(text.at().x(), text.at().y());
        double size = text.type().size() / MEASURED_AT;
        placed.scale(size, size);
        return layout(text.text(), text.type().bold()).getOutline(placed);
    }

    private static TextLayout layout(String text, boolean bold) {
        return new TextLayout(text, bold ? BOLD : PLAIN, EXACT);
    }
}
