// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;

/**
 * A scene as SVG 1.1 that stands on its own: no script, no style sheet, no reference to anything outside, the frame embedded
 * as PNG. Over a frame its coordinates are the frame's pixels.
 */
public final class SvgDrawing {
    private static final String FONTS = "'DejaVu Sans',Verdana,Arial,Helvetica,sans-serif";

    private final StringBuilder out = new StringBuilder();
    private final Sheet sheet;

    private SvgDrawing(Sheet sheet) {
        this.sheet = sheet;
    }

    /**
     * The scene as one SVG document.
     *
     * @param frame the picture, of the scene's size; without one the drawing stands alone, true to scale on paper
     * @throws IllegalArgumentException when the picture has another size than the scene
     */
    public static String text(Scene scene, Optional<BufferedImage> frame) {
        frame.ifPresent(picture -> RasterDrawing.check(scene, picture));
        return new SvgDrawing(Layout.of(scene, frame.isPresent())).write(frame);
    }

    private String write(Optional<BufferedImage> frame) {
        Box canvas = sheet.canvas();
        out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"")
                .append(number(canvas.width() * sheet.scale()))
                .append("\" height=\"")
                .append(number(canvas.height() * sheet.scale()))
                .append("\" viewBox=\"")
                .append(box(canvas))
                .append("\">\n<title>")
                .append(escaped(sheet.title()))
                .append("</title>\n<desc>")
                .append(escaped(sheet.description()))
                .append("</desc>\n");
        element(NoteBlocks.rectangle("sheet", canvas, Pen.fill(Ink.SHEET, 1)));
        Box stage = sheet.stage();
        out.append("<svg class=\"stage\" ")
                .append(place(stage))
                .append(" viewBox=\"")
                .append(box(stage))
                .append("\" overflow=\"hidden\">\n");
        sheet.ground().forEach(this::element);
        frame.ifPresent(this::picture);
        sheet.onStage().forEach(this::element);
        out.append("</svg>\n");
        sheet.beside().forEach(this::element);
        return out.append("</svg>\n").toString();
    }

    private void picture(BufferedImage frame) {
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        try {
            ImageIO.write(frame, "png", png);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        out.append("<image class=\"frame\" ")
                .append(place(sheet.picture()))
                .append(" preserveAspectRatio=\"none\" href=\"data:image/png;base64,")
                .append(Base64.getEncoder().encodeToString(png.toByteArray()))
                .append("\"/>\n");
    }

    private void element(Element element) {
        if (element instanceof Element.Trace trace) {
            trace(trace);
        } else if (element instanceof Element.Oval oval) {
            String shape = "<ellipse class=\"%s\" cx=\"" + number(oval.center().x()) + "\" cy=\""
                    + number(oval.center().y()) + "\" rx=\"" + number(oval.radiusX()) + "\" ry=\""
                    + number(oval.radiusY()) + "\"";
            outline(oval.kind(), shape, oval.pen());
        } else if (element instanceof Element.Text text) {
            text(text);
        }
    }

    private void trace(Element.Trace trace) {
        List<Xy> points = trace.points();
        if (points.size() == 2 && !trace.closed()) {
            String shape = "<line class=\"%s\" x1=\"" + number(points.get(0).x()) + "\" y1=\""
                    + number(points.get(0).y()) + "\" x2=\""
                    + number(points.get(1).x()) + "\" y2=\""
                    + number(points.get(1).y()) + "\"";
            outline(trace.kind(), shape, trace.pen());
            return;
        }
        String list = points.stream()
                .map(point -> number(point.x()) + "," + number(point.y()))
                .collect(Collectors.joining(" "));
        outline(
                trace.kind(),
                (trace.closed() ? "<polygon" : "<polyline") + " class=\"%s\" points=\"" + list + "\"",
                trace.pen());
    }

    /** The halo first, wider; then the line itself. */
    private void outline(String kind, String shape, Pen pen) {
        if (pen.halo() > 0 && pen.width() > 0) {
            out.append(String.format(shape, "halo"))
                    .append(" fill=\"none\" stroke=\"")
                    .append(color(Ink.HALO))
                    .append("\" stroke-opacity=\"")
                    .append(number(pen.halo()))
                    .append("\" stroke-linejoin=\"round\" stroke-linecap=\"round\" stroke-width=\"")
                    .append(number(Halo.width(pen)))
                    .append("\"/>\n");
        }
        out.append(String.format(shape, kind));
        if (pen.filling() > 0) {
            out.append(" fill=\"").append(color(pen.ink())).append("\"");
            if (pen.filling() < 1) {
                out.append(" fill-opacity=\"").append(number(pen.filling())).append("\"");
            }
        } else {
            out.append(" fill=\"none\"");
        }
        if (pen.width() > 0) {
            out.append(" stroke=\"")
                    .append(color(pen.ink()))
                    .append("\" stroke-linejoin=\"round\" stroke-width=\"")
                    .append(number(pen.width()))
                    .append("\"");
            if (!pen.dash().isEmpty()) {
                out.append(" stroke-dasharray=\"")
                        .append(pen.dash().stream().map(SvgDrawing::number).collect(Collectors.joining(",")))
                        .append("\"");
            }
        }
        out.append("/>\n");
    }

    private void text(Element.Text text) {
        String open = "<text class=\"%s\" x=\"" + number(text.at().x()) + "\" y=\""
                + number(text.at().y())
                + "\" font-family=\"" + FONTS + "\" font-size=\""
                + number(text.type().size()) + "\""
                + (text.type().bold() ? " font-weight=\"bold\"" : "") + " textLength=\"" + number(text.width())
                + "\" lengthAdjust=\"spacingAndGlyphs\"";
        if (text.type().halo()) {
            out.append(String.format(open, "halo"))
                    .append(" aria-hidden=\"true\" fill=\"none\" stroke=\"")
                    .append(color(Ink.HALO))
                    .append("\" stroke-opacity=\"" + Halo.TEXT_OPACITY + "\" stroke-linejoin=\"round\" stroke-width=\"")
                    .append(number(2 * Halo.TEXT * text.type().size()))
                    .append("\">")
                    .append(escaped(text.text()))
                    .append("</text>\n");
        }
        out.append(String.format(open, text.kind()))
                .append(" fill=\"")
                .append(color(text.type().ink()))
                .append("\">")
                .append(escaped(text.text()))
                .append("</text>\n");
    }

    private String color(Ink ink) {
        return String.format("#%06X", ink.rgb(sheet.palette()));
    }

    private static String place(Box box) {
        return "x=\"" + number(box.minX()) + "\" y=\"" + number(box.minY()) + "\" width=\"" + number(box.width())
                + "\" height=\"" + number(box.height()) + "\"";
    }

    private static String box(Box box) {
        return number(box.minX()) + " " + number(box.minY()) + " " + number(box.width()) + " " + number(box.height());
    }

    private static String number(double value) {
        String text = Wording.number(value, 3);
        return text.contains(".") ? text.replaceAll("\\.?0+$", "") : text;
    }

    private static String escaped(String text) {
        StringBuilder safe = new StringBuilder();
        text.codePoints().forEach(code -> {
            switch (code) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                default -> safe.appendCodePoint(isXml(code) ? code : 0xFFFD);
            }
        });
        return safe.toString();
    }

    /** Source: W3C XML 1.0 (fifth edition), production 2, Char. */
    private static boolean isXml(int code) {
        return code == 0x9
                || code == 0xA
                || code == 0xD
                || (0x20 <= code && code <= 0xD7FF)
                || (0xE000 <= code && code <= 0xFFFD)
                || (0x10000 <= code && code <= 0x10FFFF);
    }
}
