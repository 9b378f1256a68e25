// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.FrameExplanation.RegionNote;
import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Region;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;

/** A frame with its regions, the one that is used, the middle of the face and a bar of known length. */
final class FramePicture {
    private static final Color USED = new Color(0x00, 0xc8, 0xff);
    private static final Color OTHER = new Color(0xff, 0xb0, 0x00);
    private static final Color GROUND = new Color(0, 0, 0, 160);
    private static final BasicStroke SOLID = new BasicStroke(2);
    private static final BasicStroke DASHED =
            new BasicStroke(2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {6, 4}, 0);
    private static final BasicStroke UNDER = new BasicStroke(6);
    private static final int USUAL_MM = 10;
    private static final int[] LENGTHS_MM = {1, 2, 5, 10, 20, 50, 100};
    private static final double SHORTEST_SHARE = 0.05;
    private static final double LONGEST_SHARE = 0.5;
    private static final double PIXELS_NOT_SQUARE = 0.01;
    private static final int MARGIN = 8;
    private static final double FACE_MARK = 12;

    private final Graphics2D pen;
    private final BufferedImage picture;

    private FramePicture(BufferedImage frame) {
        picture = new BufferedImage(frame.getWidth(), frame.getHeight(), BufferedImage.TYPE_INT_RGB);
        pen = picture.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setFont(new Font(Font.SANS_SERIF, Font.BOLD, Math.max(10, frame.getHeight() / 40)));
        pen.drawImage(frame, 0, 0, null);
    }

    /** With its regions, the middle of the face and, where there is a scale, the bar. */
    static BufferedImage regions(BufferedImage frame, FrameGeometry geometry, FrameExplanation explanation) {
        FramePicture drawing = new FramePicture(frame);
        for (RegionNote note : explanation.regions()) {
            drawing.region(geometry.regions().get(note.number() - 1).bounds(), note);
        }
        explanation.probe().midpoint().ifPresent(drawing::face);
        explanation.calibration().ifPresent(drawing::bars);
        return drawing.done();
    }

    /** With the bar alone. */
    static BufferedImage scaleBar(BufferedImage frame, Calibration calibration) {
        FramePicture drawing = new FramePicture(frame);
        drawing.bars(calibration);
        return drawing.done();
    }

    private BufferedImage done() {
        pen.dispose();
        return picture;
    }

    private void region(Region bounds, RegionNote note) {
        pen.setColor(note.used() ? USED : OTHER);
        pen.setStroke(note.used() ? SOLID : DASHED);
        double width = Math.min(bounds.maxColumn() + 1, picture.getWidth()) - bounds.minColumn();
        double height = Math.min(bounds.maxRow() + 1, picture.getHeight()) - bounds.minRow();
        pen.draw(new Rectangle2D.Double(bounds.minColumn() + 1, bounds.minRow() + 1, width - 2, height - 2));
        String label = note.number() + (note.used() ? " used" : "");
        label(
                label,
                bounds.minColumn() + MARGIN,
                bounds.minRow() + pen.getFontMetrics().getAscent() + MARGIN);
    }

    /** Text on a dark ground, so that it can be read on bright echoes. */
    private void label(String text, int column, int baseline) {
        Color ink = pen.getColor();
        FontMetrics metrics = pen.getFontMetrics();
        pen.setColor(GROUND);
        pen.fillRect(column - 2, baseline - metrics.getAscent(), metrics.stringWidth(text) + 4, metrics.getHeight());
        pen.setColor(ink);
        pen.drawString(text, column, baseline);
    }

    private void face(PointPx midpoint) {
        pen.setColor(USED);
        pen.setStroke(SOLID);
        double column = midpoint.column();
        double row = midpoint.row();
        pen.draw(new Line2D.Double(column, row - FACE_MARK, column, row + FACE_MARK));
        pen.draw(new Line2D.Double(column - FACE_MARK, row, column + FACE_MARK, row));
    }

    /**
     * In the lower right corner of what is measured in, where captions are rare; where pixels are not square, a second bar
     * upwards from it.
     */
    private void bars(Calibration calibration) {
        int left = calibration.region().map(Region::minColumn).orElse(0);
        int right =
                Math.min(calibration.region().map(Region::maxColumn).orElse(Integer.MAX_VALUE), picture.getWidth() - 1);
        int bottom =
                Math.min(calibration.region().map(Region::maxRow).orElse(Integer.MAX_VALUE), picture.getHeight() - 1);
        PixelSize pixel = calibration.pixel();
        int mm = barMm((right - left) * pixel.mmPerColumn());
        double across = mm / pixel.mmPerColumn();
        double down = mm / pixel.mmPerRow();
        double end = right - 2.0 * MARGIN;
        double row = bottom - 2.0 * MARGIN;
        line(new Line2D.Double(end - across, row, end, row));
        if (Math.abs(across / down - 1) > PIXELS_NOT_SQUARE) {
            line(new Line2D.Double(end, row - down, end, row));
        }
        label(mm % 10 == 0 ? mm / 10 + " cm" : mm + " mm", (int) (end - across), (int) row - MARGIN);
    }

    /** One centimetre, or what is readable on a much smaller or larger field. */
    private static int barMm(double widthMm) {
        if (USUAL_MM >= SHORTEST_SHARE * widthMm && USUAL_MM <= LONGEST_SHARE * widthMm) {
            return USUAL_MM;
        }
        for (int mm : LENGTHS_MM) {
            if (mm >= 2 * SHORTEST_SHARE * widthMm) {
                return mm;
            }
        }
        return LENGTHS_MM[LENGTHS_MM.length - 1];
    }

    private void line(Line2D line) {
        pen.setColor(GROUND);
        pen.setStroke(UNDER);
        pen.draw(line);
        pen.setColor(Color.WHITE);
        pen.setStroke(SOLID);
        pen.draw(line);
    }
}
