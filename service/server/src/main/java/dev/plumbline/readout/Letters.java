// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.readout;

import java.awt.Font;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;

/**
 * Text on paper: an embedded font that comes with the PDF library, so that every reader shows the same letters. Letters it
 * lacks are drawn as outlines of a font of this machine; where that has none either, a question mark says so.
 */
final class Letters {
    private static final String EMBEDDED = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
    private static final Font OTHER = new Font(Font.SANS_SERIF, Font.PLAIN, 1);
    private static final FontRenderContext EXACT = new FontRenderContext(null, true, true);
    private static final float THOUSANDTHS = 1000;
    private static final String UNKNOWN = "?";

    private final PDType0Font font;

    Letters(PDDocument document) throws IOException {
        try (InputStream in = Letters.class.getResourceAsStream(EMBEDDED)) {
            if (in == null) {
                throw new IllegalStateException("The PDF library has no font with it.");
            }
            font = PDType0Font.load(document, in, true);
        }
    }

    /** Letters that one font has. */
    private record Run(String text, boolean embedded) {}

    float width(String text, float size) throws IOException {
        float width = 0;
        for (Run run : runs(text)) {
            width += width(run, size);
        }
        return width;
    }

    private float width(Run run, float size) throws IOException {
        return run.embedded()
                ? font.getStringWidth(run.text()) / THOUSANDTHS * size
                : outline(run.text()).getAdvance() * size;
    }

    /** Shows a line of text; bold by a thin line round the letters, as the font has one weight only. */
    void show(PDPageContentStream page, String text, Place place) throws IOException {
        float x = place.x();
        for (Run run : runs(text)) {
            if (run.embedded()) {
                page.beginText();
                page.setFont(font, place.size());
                page.setRenderingMode(place.bold() ? RenderingMode.FILL_STROKE : RenderingMode.FILL);
                page.setLineWidth(place.size() / 30);
                page.newLineAtOffset(x, place.y());
                page.showText(run.text());
                page.endText();
            } else {
                AffineTransform at = AffineTransform.getTranslateInstance(x, place.y());
                at.scale(place.size(), -place.size());
                fill(page, outline(run.text()).getOutline(at));
            }
            x += width(run, place.size());
        }
    }

    /** Where the base line starts, in points from the lower left corner, and how large the letters are. */
    record Place(float x, float y, float size, boolean bold) {}

    private static java.awt.font.TextLayout outline(String text) {
        return new java.awt.font.TextLayout(text, OTHER, EXACT);
    }

    private List<Run> runs(String text) {
        List<Run> runs = new ArrayList<>();
        StringBuilder same = new StringBuilder();
        boolean embedded = true;
        for (int c : text.codePoints().toArray()) {
            String letter = Character.isISOControl(c) ? " " : Character.toString(c);
            boolean here = has(letter);
            if (!here && !OTHER.canDisplay(c)) {
                letter = UNKNOWN;
                here = true;
            }
            if (here != embedded && same.length() > 0) {
                runs.add(new Run(same.toString(), embedded));
                same.setLength(0);
            }
            embedded = here;
            same.append(letter);
        }
        if (same.length() > 0) {
            runs.add(new Run(same.toString(), embedded));
        }
        return runs;
    }

    private boolean has(String letter) {
        try {
            font.encode(letter);
            return true;
        } catch (IllegalArgumentException noGlyph) { // its way to say that it lacks a letter
            return false;
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static void fill(PDPageContentStream page, Shape shape) throws IOException {
        float[] at = new float[6];
        float[] last = new float[2];
        boolean any = false;
        for (PathIterator path = shape.getPathIterator(null); !path.isDone(); path.next()) {
            int segment = path.currentSegment(at);
            any = true;
            switch (segment) {
                case PathIterator.SEG_MOVETO -> page.moveTo(at[0], at[1]);
                case PathIterator.SEG_LINETO -> page.lineTo(at[0], at[1]);
                case PathIterator.SEG_QUADTO -> quadratic(page, last, at);
                case PathIterator.SEG_CUBICTO -> page.curveTo(at[0], at[1], at[2], at[3], at[4], at[5]);
                default -> page.closePath();
            }
            int end = segment == PathIterator.SEG_CUBICTO ? 4 : segment == PathIterator.SEG_QUADTO ? 2 : 0;
            if (segment != PathIterator.SEG_CLOSE) {
                last[0] = at[end];
                last[1] = at[end + 1];
            }
        }
        if (any) {
            page.fill();
        }
    }

    /** A quadratic curve as a cubic one: control points at two thirds of the way. Source: elementary. */
    private static void quadratic(PDPageContentStream page, float[] from, float[] at) throws IOException {
        page.curveTo(
                from[0] + 2 * (at[0] - from[0]) / 3,
                from[1] + 2 * (at[1] - from[1]) / 3,
                at[2] + 2 * (at[0] - at[2]) / 3,
                at[3] + 2 * (at[1] - at[3]) / 3,
                at[2],
                at[3]);
    }
}
