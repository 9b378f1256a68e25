// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Samples as an image to look at. */
final class Rendering {
    private static final int BYTES_PER_COLOUR = 3;
    private static final int WHITE = 255;

    private final DataSet header;
    private final ImageDescription description;
    private final int frameNumber;

    /** @param frameNumber from 1 */
    Rendering(DataSet header, ImageDescription description, int frameNumber) {
        this.header = header;
        this.description = description;
        this.frameNumber = frameNumber;
    }

    /** @param window instead of what the object states */
    BufferedImage render(Samples samples, Optional<Window> window) {
        if (description.isGrey()) {
            return grey(samples, window);
        }
        if (window.isPresent()) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The frame is in colour; a window applies to grey frames.", "Leave the window out."));
        }
        return description.isPalette() ? palette(samples) : colour(samples);
    }

    private BufferedImage grey(Samples samples, Optional<Window> window) {
        byte[] table = new GreyTable(description, FrameGeometryReader.sources(header, frameNumber), window).build();
        BufferedImage image = new BufferedImage(samples.columns(), samples.rows(), BufferedImage.TYPE_BYTE_GRAY);
        byte[] shown = bytes(image);
        for (int pixel = 0; pixel < shown.length; pixel++) {
            shown[pixel] = table[samples.at(0, pixel) & (table.length - 1)];
        }
        return image;
    }

    private BufferedImage palette(Samples samples) {
        if (header.holds(Tag.SEGMENTED_RED_PALETTE_COLOR_LOOKUP_TABLE_DATA)) {
            throw Fault.unsupported(
                    "The palette is segmented " + Fault.name(Tag.SEGMENTED_RED_PALETTE_COLOR_LOOKUP_TABLE_DATA),
                    "Send plain palette tables.");
        }
        List<LookupTable> tables = new ArrayList<>();
        for (int step = 0; step < BYTES_PER_COLOUR; step++) {
            tables.add(LookupTable.read(
                    header,
                    Tag.RED_PALETTE_COLOR_LOOKUP_TABLE_DESCRIPTOR + step,
                    Tag.RED_PALETTE_COLOR_LOOKUP_TABLE_DATA + step,
                    description.signed()));
        }
        int mask = (1 << description.bitsStored()) - 1;
        return coloured(samples, (band, pixel) -> {
            LookupTable table = tables.get(band);
            return table.at(samples.at(0, pixel) & mask) >> (table.bits() - 8);
        });
    }

    private BufferedImage colour(Samples samples) {
        boolean rgb = samples.converted() || description.shape().photometric().equals("RGB");
        return rgb
                ? coloured(samples, (band, pixel) -> eightBits(samples.at(band, pixel)))
                : coloured(samples, (band, pixel) -> fromYbr(samples, band, pixel));
    }

    /** Source: DICOM PS3.3, C.7.6.3.1.2 (YBR_FULL), solved for red, green and blue. */
    private int fromYbr(Samples samples, int band, int pixel) {
        double luminance = eightBits(samples.at(0, pixel));
        double blue = eightBits(samples.at(1, pixel)) - 128;
        double red = eightBits(samples.at(2, pixel)) - 128;
        double value = luminance
                + switch (band) {
                    case 0 -> 1.402 * red;
                    case 1 -> -0.344136 * blue - 0.714136 * red;
                    default -> 1.772 * blue;
                };
        return (int) Math.round(Math.min(Math.max(value, 0), WHITE));
    }

    private int eightBits(int sample) {
        int stored = description.bitsStored();
        int largest = (1 << stored) - 1;
        return stored == 8 ? sample & WHITE : ((sample & largest) * WHITE + largest / 2) / largest;
    }

    private static BufferedImage coloured(Samples samples, Colour colour) {
        BufferedImage image = new BufferedImage(samples.columns(), samples.rows(), BufferedImage.TYPE_3BYTE_BGR);
        byte[] shown = bytes(image);
        for (int pixel = 0; pixel < samples.pixels(); pixel++) {
            for (int band = 0; band < BYTES_PER_COLOUR; band++) {
                shown[BYTES_PER_COLOUR * pixel + BYTES_PER_COLOUR - 1 - band] = (byte) colour.at(band, pixel);
            }
        }
        return image;
    }

    private static byte[] bytes(BufferedImage image) {
        return ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
    }

    /** Red, green and blue by band. */
    private interface Colour {
        int at(int band, int pixel);
    }
}
