// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.awt.color.ColorSpace;

/**
 * A layer of a presentation state, DICOM PS3.3 C.10.7; what was observed lies above what was planned. Colours are those of
 * the drawings over a frame, so that a viewer and a Secondary Capture look alike.
 */
enum GraphicLayer {
    PLAN(1, "Planned path and marked structures", 0x6CC8F7),
    OBSERVED(2, "Observed path", 0xFFC04A);

    /** White of the profile connection space, D50. Source: ICC.1, PCS illuminant. */
    private static final double[] WHITE = {0.9642, 1.0, 0.8249};

    private static final int FULL = 0xFFFF;

    private final int order;
    private final String description;
    private final int rgb;

    GraphicLayer(int order, String description, int rgb) {
        this.order = order;
        this.description = description;
        this.rgb = rgb;
    }

    /** What was found decides the layer. */
    static GraphicLayer of(Code finding) {
        return finding.means(Concepts.OBSERVATION) ? OBSERVED : PLAN;
    }

    DataSet item() {
        return new DataSet()
                .put(Tag.GRAPHIC_LAYER, name())
                .put(Tag.GRAPHIC_LAYER_ORDER, Integer.toString(order))
                .put(Tag.GRAPHIC_LAYER_RECOMMENDED_DISPLAY_GRAYSCALE_VALUE, FULL)
                .put(Tag.GRAPHIC_LAYER_DESCRIPTION, description)
                .put(Tag.GRAPHIC_LAYER_RECOMMENDED_DISPLAY_CIE_LAB_VALUE, cieLab());
    }

    /**
     * The colour in the profile connection space, whole numbers over their full range.
     *
     * <p>Source: CIE 15, L*a*b*; range DICOM PS3.3 C.10.7.1.1.
     */
    int[] cieLab() {
        float[] colour = {(rgb >> 16 & 0xFF) / 255f, (rgb >> 8 & 0xFF) / 255f, (rgb & 0xFF) / 255f};
        float[] xyz = ColorSpace.getInstance(ColorSpace.CS_sRGB).toCIEXYZ(colour);
        double x = root(xyz[0] / WHITE[0]);
        double y = root(xyz[1] / WHITE[1]);
        double z = root(xyz[2] / WHITE[2]);
        return new int[] {
            (int) Math.round((116 * y - 16) * FULL / 100),
            (int) Math.round((500 * (x - y) + 128) * FULL / 255),
            (int) Math.round((200 * (y - z) + 128) * FULL / 255)
        };
    }

    private static double root(double share) {
        return share > 216.0 / 24389 ? Math.cbrt(share) : (24389.0 / 27 * share + 16) / 116;
    }
}
