// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * From stored grey values to the 256 greys that are shown: modality transformation, then the object's first window or
 * table of values of interest, else the whole range. Source: DICOM PS3.3, C.11.1 and C.11.2.
 */
final class GreyTable {
    private static final int WHITE = 255;

    private final ImageDescription description;
    private final List<DataSet> sources;
    private final Optional<Window> asked;

    /**
     * A table for the greys of one frame.
     *
     * @param sources where windows may stand, what is nearest to the frame first
     * @param asked goes before what the object says
     */
    GreyTable(ImageDescription description, List<DataSet> sources, Optional<Window> asked) {
        this.description = description;
        this.sources = sources;
        this.asked = asked;
    }

    /** Grey for every combination of the stored bits. */
    byte[] build() {
        int range = 1 << description.bitsStored();
        DoubleUnaryOperator modality = modality();
        DoubleUnaryOperator shown = asked.map(Window::shares).orElseGet(() -> valuesOfInterest(modality));
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
            Window.Function function = function(source);
            if (width > 0 && Double.isFinite(center + width) && (width >= 1 || function != Window.Function.LINEAR)) {
                return new Window(center, width, function).shares();
            }
            List<DataSet> tables = source.items(Tag.VOI_LUT_SEQUENCE);
            if (!tables.isEmpty()) {
                return table(tables.get(0))::fraction;
            }
        }
        return wholeRange(modality);
    }

    private static Window.Function function(DataSet source) {
        String stated = source.string(Tag.VOI_LUT_FUNCTION).orElse("");
        return Arrays.stream(Window.Function.values())
                .filter(function -> function.name().equals(stated))
                .findFirst()
                .orElse(Window.Function.LINEAR);
    }

    private DoubleUnaryOperator wholeRange(DoubleUnaryOperator modality) {
        int last = (1 << description.bitsStored()) - 1;
        double one = modality.applyAsDouble(value(description.signed() ? (last >> 1) + 1 : 0));
        double other = modality.applyAsDouble(value(description.signed() ? last >> 1 : last));
        double low = Math.min(one, other);
        double span = Math.abs(other - one);
        return span > 0 ? value -> (value - low) / span : value -> 0;
    }

    private LookupTable table(DataSet item) {
        return LookupTable.read(item, Tag.LUT_DESCRIPTOR, Tag.LUT_DATA, description.signed());
    }
}
