// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.readout;

import java.awt.Font;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
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
    private final Map<Integer, Run> letters = new HashMap<>();

    Letters(PDDocument document) throws IOException {
        try (InputStream in = Letters.class.getResourceAsStream(EMBEDDED)) {
            if (in == null) {
                throw new IllegalStateException("The PDF library has no font with it.");
            }
            TrueTypeFont parsed = new TTFParser().parse(RandomAccessReadBuffer.createBufferFromStream(in));
            document.registerTrueTypeFontForClosing(parsed);
            // without ligatures, so that a text is as wide as its letters; to look for them took a third of a record's
            // time
            parsed.setEnableGsub(false);
            font = PDType0Font.load(document, parsed, true);
        }
    }

    /**
     * Letters that one font has.
     *
     * @param thousandths how wide, in thousandths of their size; of the embedded font only
     */
    private record Run(String text, boolean embedded, float thousandths) {}

    float width(String text, float size) {
        float width = 0;
        for (Run run : runs(text)) {
            width += width(run, size);
        }
        return width;
    }

    private static float width(Run run, float size) {
        return run.embedded()
                ? run.thousandths() / THOUSANDTHS * size
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
        float thousandths = 0;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            Run letter = letters.computeIfAbsent(text.codePointAt(i), this::letter);
            if (letter.embedded() != embedded && !same.isEmpty()) {
                runs.add(new Run(same.toString(), embedded, thousandths));
                same.setLength(0);
                thousandths = 0;
            }
            embedded = letter.embedded();
            same.append(letter.text());
            thousandths += letter.thousandths();
        }
        if (!same.isEmpty()) {
            runs.add(new Run(same.toString(), embedded, thousandths));
        }
        return runs;
    }

    private Run letter(int c) {
        String letter = Character.isISOControl(c) ? " " : Character.toString(c);
        boolean here = has(letter);
        if (!here && !OTHER.canDisplay(c)) {
            letter = UNKNOWN;
            here = true;
        }
        return new Run(letter, here, here ? thousandths(letter) : 0);
    }

    private float thousandths(String letter) {
        try {
            return font.getStringWidth(letter);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private boolean has(String letter) {
        try {
            font.encode(letter);
            return true;
        } catch (IllegalArgumentException noGlyph) { // its way to say that it lacks a letter
            return false;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
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
