// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How large a picture is wanted, and of which part of the image. The part is made as large as fits; the ratio of its sides
 * stays. Source: DICOM PS3.18 8.3.5.1.3.
 *
 * @param width of the picture at most, in pixels
 * @param height of the picture at most, in pixels
 * @param part empty for the whole image
 */
record Viewport(int width, int height, Optional<Part> part) {
    private static final String NUMBER = "(-?\\d{1,5}(?:\\.\\d{1,6})?)?";
    private static final Pattern TEXT = Pattern.compile(
            "([1-9]\\d{0,3}),([1-9]\\d{0,3})(?:," + NUMBER + ",?" + NUMBER + ",?" + NUMBER + ",?" + NUMBER + ")?");

    /** Of either side of a picture. Source: design choice. */
    static final int LARGEST_SIDE = 4096;

    /**
     * A part of an image in pixels from its top left corner; a side below 0 is turned over, NaN is up to the edge.
     *
     * <p>Source: DICOM PS3.18 8.3.5.1.3.
     */
    record Part(double left, double top, double width, double height) {}

    static Viewport of(String text) {
        Matcher matcher = TEXT.matcher(text);
        if (!matcher.matches()) {
            throw unreadable();
        }
        int width = Integer.parseInt(matcher.group(1));
        int height = Integer.parseInt(matcher.group(2));
        if (Math.max(width, height) > LARGEST_SIDE) {
            throw unreadable();
        }
        boolean whole = text.chars().filter(c -> c == ',').count() == 1;
        Part part = new Part(
                number(matcher.group(3), 0),
                number(matcher.group(4), 0),
                number(matcher.group(5), Double.NaN),
                number(matcher.group(6), Double.NaN));
        return new Viewport(width, height, whole ? Optional.empty() : Optional.of(part));
    }

    private static double number(String text, double otherwise) {
        return text == null || text.isEmpty() ? otherwise : Double.parseDouble(text);
    }

    private static Refusal unreadable() {
        return new Refusal(new Problem.InvalidValue(
                "",
                "The viewport is not readable, or larger than " + LARGEST_SIDE + " pixels.",
                "Write width,height or width,height,left,top,width,height in pixels, the last four of the image."));
    }

    /** The picture. */
    BufferedImage of(BufferedImage image) {
        Part wanted = part.orElse(new Part(0, 0, Double.NaN, Double.NaN));
        Span across = Span.of(wanted.left(), wanted.width(), image.getWidth());
        Span down = Span.of(wanted.top(), wanted.height(), image.getHeight());
        double scale = Math.min(width / across.length(), height / down.length());
        int columns = side(across.length() * scale, width);
        int rows = side(down.length() * scale, height);
        boolean asItIs = columns == image.getWidth() && rows == image.getHeight();
        if (asItIs && !across.turned() && !down.turned()) {
            return image;
        }
        AffineTransform transform = new AffineTransform(
                across.factor(scale), 0, 0, down.factor(scale), across.shift(scale), down.shift(scale));
        BufferedImage picture = new BufferedImage(columns, rows, image.getType());
        Graphics2D graphics = picture.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        graphics.drawImage(image, transform, null);
        graphics.dispose();
        return picture;
    }

    private static int side(double length, int most) {
        return Math.max(1, Math.min(most, (int) Math.round(length)));
    }

    /** Along one side of the image, within it. */
    private record Span(double from, double to, boolean turned) {
        static Span of(double start, double length, int side) {
            double end = Double.isNaN(length) ? side : start + Math.abs(length);
            Span span = new Span(Math.max(0, start), Math.min(side, end), length < 0);
            if (!(span.length() > 0)) {
                throw new Refusal(new Problem.InvalidValue(
                        "",
                        "The part of the image in the viewport has no pixel of it.",
                        "Ask for a part of the image."));
            }
            return span;
        }

        double length() {
            return to - from;
        }

        double factor(double scale) {
            return turned ? -scale : scale;
        }

        double shift(double scale) {
            return turned ? to * scale : -from * scale;
        }
    }
}
