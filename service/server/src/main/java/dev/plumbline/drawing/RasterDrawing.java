// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Optional;

/** A scene as a picture of RGB pixels, the same drawing as {@link SvgDrawing} gives. */
public final class RasterDrawing {
    private final Sheet sheet;
    private final Graphics2D graphics;

    private RasterDrawing(Sheet sheet, Graphics2D graphics) {
        this.sheet = sheet;
        this.graphics = graphics;
    }

    /**
     * The scene as an RGB picture.
     *
     * @param frame the picture, of the scene's size; without one the drawing stands alone, true to scale on paper
     * @throws IllegalArgumentException when the picture has another size than the scene
     */
    public static BufferedImage image(Scene scene, Optional<BufferedImage> frame) {
        return painted(scene, frame).sheet();
    }

    /**
     * A drawing in pixels.
     *
     * @param sheet the picture with what stands beside it
     * @param stage the picture alone, a part of the sheet
     */
    public record Painted(BufferedImage sheet, BufferedImage stage) {}

    /** As {@link #image}, and where the picture is on it. */
    public static Painted painted(Scene scene, Optional<BufferedImage> frame) {
        frame.ifPresent(picture -> check(scene, picture));
        Sheet sheet = Layout.of(scene, frame.isPresent());
        BufferedImage image = new BufferedImage(
                (int) Math.ceil(sheet.canvas().width() * sheet.scale()),
                (int) Math.ceil(sheet.canvas().height() * sheet.scale()),
                BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        try {
            new RasterDrawing(sheet, graphics).draw(image, frame);
        } finally {
            graphics.dispose();
        }
        return new Painted(image, stage(sheet, image));
    }

    private static BufferedImage stage(Sheet sheet, BufferedImage image) {
        Box stage = sheet.stage();
        int left = (int) Math.floor((stage.minX() - sheet.canvas().minX()) * sheet.scale());
        int top = (int) Math.floor((stage.minY() - sheet.canvas().minY()) * sheet.scale());
        int width = (int) Math.min(Math.ceil(stage.width() * sheet.scale()), image.getWidth() - left);
        int height = (int) Math.min(Math.ceil(stage.height() * sheet.scale()), image.getHeight() - top);
        return image.getSubimage(left, top, width, height);
    }

    static void check(Scene scene, BufferedImage picture) {
        if (picture.getWidth() != scene.columns() || picture.getHeight() != scene.rows()) {
            throw new IllegalArgumentException("The picture is " + picture.getWidth() + " x " + picture.getHeight()
                    + " pixels, the scene " + scene.columns() + " x " + scene.rows() + ".");
        }
    }

    private void draw(BufferedImage image, Optional<BufferedImage> frame) {
        graphics.setColor(color(Ink.SHEET, 1));
        graphics.fillRect(0, 0, image.getWidth(), image.getHeight());
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        graphics.scale(sheet.scale(), sheet.scale());
        graphics.translate(-originX(), -originY());
        Shape all = graphics.getClip();
        Box stage = sheet.stage();
        graphics.clip(new Rectangle2D.Double(stage.minX(), stage.minY(), stage.width(), stage.height()));
        sheet.ground().forEach(this::element);
        frame.ifPresent(picture -> graphics.drawImage(picture, new AffineTransform(), null));
        sheet.onStage().forEach(this::element);
        graphics.setClip(all);
        sheet.beside().forEach(this::element);
    }

    /** Whole output pixels, so that the frame's pixels stay what they are. */
    private double originX() {
        return Math.floor(sheet.canvas().minX() * sheet.scale()) / sheet.scale();
    }

    private double originY() {
        return Math.floor(sheet.canvas().minY() * sheet.scale()) / sheet.scale();
    }

    private void element(Element element) {
        if (element instanceof Element.Trace trace) {
            Path2D path = new Path2D.Double();
            path.moveTo(trace.points().get(0).x(), trace.points().get(0).y());
            trace.points().stream().skip(1).forEach(point -> path.lineTo(point.x(), point.y()));
            if (trace.closed()) {
                path.closePath();
            }
            outline(path, trace.pen());
        } else if (element instanceof Element.Oval oval) {
            outline(
                    new Ellipse2D.Double(
                            oval.center().x() - oval.radiusX(),
                            oval.center().y() - oval.radiusY(),
                            2 * oval.radiusX(),
                            2 * oval.radiusY()),
                    oval.pen());
        } else if (element instanceof Element.Text text && !text.text().isEmpty()) {
            text(text);
        }
    }

    private void outline(Shape shape, Pen pen) {
        if (pen.halo() > 0 && pen.width() > 0) {
            graphics.setColor(color(Ink.HALO, pen.halo()));
            graphics.setStroke(new BasicStroke((float) Halo.width(pen), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
            graphics.draw(shape);
        }
        if (pen.filling() > 0) {
            graphics.setColor(color(pen.ink(), pen.filling()));
            graphics.fill(shape);
        }
        if (pen.width() > 0) {
            graphics.setColor(color(pen.ink(), 1));
            graphics.setStroke(stroke(pen));
            graphics.draw(shape);
        }
    }

    private static BasicStroke stroke(Pen pen) {
        if (pen.dash().isEmpty()) {
            return new BasicStroke((float) pen.width(), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
        }
        float[] dash = new float[pen.dash().size()];
        for (int i = 0; i < dash.length; i++) {
            dash[i] = pen.dash().get(i).floatValue();
        }
        return new BasicStroke((float) pen.width(), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, dash, 0);
    }

    private void text(Element.Text text) {
        Shape letters = Lettering.outline(text);
        if (text.type().halo()) {
            graphics.setColor(color(Ink.HALO, Halo.TEXT_OPACITY));
            graphics.setStroke(new BasicStroke(
                    (float) (2 * Halo.TEXT * text.type().size()), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
            graphics.draw(letters);
        }
        graphics.setColor(color(text.type().ink(), 1));
        graphics.fill(letters);
    }

    private Color color(Ink ink, double opacity) {
        int rgb = ink.rgb(sheet.palette());
        return new Color(rgb >> 16 & 0xFF, rgb >> 8 & 0xFF, rgb & 0xFF, (int) Math.round(255 * opacity));
    }
}
