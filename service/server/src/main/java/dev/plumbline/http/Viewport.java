// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
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
    private static final Pattern SIDE = Pattern.compile("[1-9]\\d{0,3}");
    private static final Pattern PLACE = Pattern.compile("(-?\\d{1,5}(\\.\\d{1,6})?)?");
    private static final int SIDES = 2;
    private static final int SIDES_AND_PART = 6;

    /** Of either side of a picture. Source: design choice. */
    static final int LARGEST_SIDE = 4096;

    /**
     * A part of an image in pixels from its top left corner; a side below 0 is turned over, NaN is up to the edge.
     *
     * <p>Source: DICOM PS3.18 8.3.5.1.3.
     */
    record Part(double left, double top, double width, double height) {}

    static Viewport of(String text) {
        List<String> numbers = List.of(text.split(",", -1));
        int count = numbers.size();
        boolean readable = count >= SIDES
                && count <= SIDES_AND_PART
                && numbers.subList(0, SIDES).stream().allMatch(SIDE.asMatchPredicate())
                && numbers.subList(SIDES, count).stream().allMatch(PLACE.asMatchPredicate());
        if (!readable) {
            throw unreadable();
        }
        int width = Integer.parseInt(numbers.get(0));
        int height = Integer.parseInt(numbers.get(1));
        if (Math.max(width, height) > LARGEST_SIDE) {
            throw unreadable();
        }
        return new Viewport(width, height, count == SIDES ? Optional.empty() : Optional.of(part(numbers)));
    }

    private static Part part(List<String> numbers) {
        return new Part(
                number(numbers, 2, 0),
                number(numbers, 3, 0),
                number(numbers, 4, Double.NaN),
                number(numbers, 5, Double.NaN));
    }

    /** What is left out, or left blank, is as usual. */
    private static double number(List<String> numbers, int place, double otherwise) {
        boolean stated = place < numbers.size() && !numbers.get(place).isEmpty();
        return stated ? Double.parseDouble(numbers.get(place)) : otherwise;
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
        if (across.isWhole(image.getWidth(), columns) && down.isWhole(image.getHeight(), rows)) {
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

        /** All of a side of the image, drawn as it is. */
        boolean isWhole(int side, int drawn) {
            return length() == side && drawn == side && !turned;
        }

        double factor(double scale) {
            return turned ? -scale : scale;
        }

        double shift(double scale) {
            return turned ? to * scale : -from * scale;
        }
    }
}
