// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * Who and what is shown, written into the top of a picture that is handed out; the object itself is never changed. Source:
 * DICOM PS3.18 8.3.5.1.1, which leaves to the server how it looks.
 */
final class BurntAnnotation {
    private static final String PATIENT = "patient";
    private static final String TECHNIQUE = "technique";

    /** What can be asked for. */
    static final List<String> WORDS = List.of(PATIENT, TECHNIQUE);

    private static final int SMALLEST_TEXT = 8;
    private static final int LARGEST_TEXT = 28;
    private static final int LINES_IN_PICTURE = 24;
    private static final int LONGEST = 120;

    private BurntAnnotation() {}

    /** @param words some of {@link #WORDS} */
    static void draw(BufferedImage picture, List<String> words, DicomFile file, int frameNumber) {
        List<String> lines = new ArrayList<>();
        if (words.contains(PATIENT)) {
            lines.add(line(file.header(), Tag.PATIENT_NAME, Tag.PATIENT_ID, Tag.PATIENT_BIRTH_DATE, Tag.PATIENT_SEX));
        }
        if (words.contains(TECHNIQUE)) {
            lines.add(line(
                            file.header(),
                            Tag.MODALITY,
                            Tag.MANUFACTURER,
                            Tag.MANUFACTURER_MODEL_NAME,
                            Tag.STUDY_DATE,
                            Tag.STUDY_TIME)
                    + ", frame " + frameNumber + " of " + file.frameCount());
        }
        write(picture, lines);
    }

    /** A name's first group with blanks between its parts, which is how it is read. */
    private static String line(DataSet header, int... tags) {
        return Arrays.stream(tags)
                .mapToObj(tag -> header.string(tag).orElse(null))
                .filter(Objects::nonNull)
                .map(text -> text.replaceAll("=.*", "").replace('^', ' ').strip())
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(", "));
    }

    private static void write(BufferedImage picture, List<String> lines) {
        Graphics2D graphics = picture.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        int size = Math.max(SMALLEST_TEXT, Math.min(LARGEST_TEXT, picture.getHeight() / LINES_IN_PICTURE));
        graphics.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, size));
        FontMetrics letters = graphics.getFontMetrics();
        int baseline = letters.getAscent();
        for (String line : lines) {
            String shown = line.substring(0, Math.min(line.length(), LONGEST));
            graphics.setColor(Color.BLACK);
            graphics.fillRect(
                    0, baseline - letters.getAscent(), letters.stringWidth(shown) + size, letters.getHeight());
            graphics.setColor(Color.WHITE);
            graphics.drawString(shown, size / 2, baseline);
            baseline += letters.getHeight();
        }
        graphics.dispose();
    }
}
