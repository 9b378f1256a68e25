// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * From stored grey values to the 256 greys that are shown: modality transformation, then the object's first window or
 * table of values of interest, else the whole range. Source: DICOM PS3.3, C.11.1 and C.11.2.
 */
final class GreyTable {
    private static final int WHITE = 255;

    private final ImageDescription description;
    private final List<DataSet> sources;

    /** @param sources where windows may stand, what is nearest to the frame first */
    GreyTable(ImageDescription description, List<DataSet> sources) {
        this.description = description;
        this.sources = sources;
    }

    /** Grey for every combination of the stored bits. */
    byte[] build() {
        int range = 1 << description.bitsStored();
        DoubleUnaryOperator modality = modality();
        DoubleUnaryOperator shown = valuesOfInterest(modality);
        boolean inverted = description.shape().photometric().equals("MONOCHROME1");
        byte[] table = new byte[range];
        for (int stored = 0; stored < range; stored++) {
            double fraction = shown.applyAsDouble(modality.applyAsDouble(value(stored)));
            double grey = Math.min(Math.max(fraction, 0), 1) * WHITE;
            table[stored] = (byte) Math.round(inverted ? WHITE - grey : grey);
        }
        return table;
    }

    private int value(int stored) {
        int sign = 1 << (description.bitsStored() - 1);
        return description.signed() && (stored & sign) != 0 ? stored - 2 * sign : stored;
    }

    private DoubleUnaryOperator modality() {
        for (DataSet source : sources) {
            List<DataSet> tables = source.items(Tag.MODALITY_LUT_SEQUENCE);
            if (!tables.isEmpty()) {
                return table(tables.get(0))::at;
            }
            if (source.number(Tag.RESCALE_SLOPE).isPresent()) {
                double slope = source.number(Tag.RESCALE_SLOPE).getAsDouble();
                double intercept = source.number(Tag.RESCALE_INTERCEPT).orElse(0);
                return stored -> slope * stored + intercept;
            }
        }
        return stored -> stored;
    }

    private DoubleUnaryOperator valuesOfInterest(DoubleUnaryOperator modality) {
        for (DataSet source : sources) {
            double width = source.number(Tag.WINDOW_WIDTH).orElse(0);
            double center = source.number(Tag.WINDOW_CENTER).orElse(Double.NaN);
            String function = source.string(Tag.VOI_LUT_FUNCTION).orElse("LINEAR");
            if (width > 0 && Double.isFinite(center) && (width >= 1 || !function.equals("LINEAR"))) {
                return window(function, center, width);
            }
            List<DataSet> tables = source.items(Tag.VOI_LUT_SEQUENCE);
            if (!tables.isEmpty()) {
                return table(tables.get(0))::fraction;
            }
        }
        return wholeRange(modality);
    }

    private DoubleUnaryOperator wholeRange(DoubleUnaryOperator modality) {
        int last = (1 << description.bitsStored()) - 1;
        double one = modality.applyAsDouble(value(description.signed() ? (last >> 1) + 1 : 0));
        double other = modality.applyAsDouble(value(description.signed() ? last >> 1 : last));
        double low = Math.min(one, other);
        double span = Math.abs(other - one);
        return span > 0 ? value -> (value - low) / span : value -> 0;
    }

    /** Source: DICOM PS3.3, C.11.2.1.2 (LINEAR) and C.11.2.1.3 (SIGMOID, LINEAR_EXACT). */
    private static DoubleUnaryOperator window(String function, double center, double width) {
        return switch (function) {
            case "SIGMOID" -> value -> 1 / (1 + Math.exp(-4 * (value - center) / width));
            case "LINEAR_EXACT" -> value -> (value - center) / width + 0.5;
            default -> linear(center, width);
        };
    }

    private static DoubleUnaryOperator linear(double center, double width) {
        return value -> {
            if (value <= center - 0.5 - (width - 1) / 2) {
                return 0;
            }
            if (value > center - 0.5 + (width - 1) / 2) {
                return 1;
            }
            return (value - (center - 0.5)) / (width - 1) + 0.5;
        };
    }

    private LookupTable table(DataSet item) {
        return LookupTable.read(item, Tag.LUT_DESCRIPTOR, Tag.LUT_DATA, description.signed());
    }
}
