// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

/**
 * What a colour stands for, over a frame and alone. Line style and words carry the same meaning, so that a grey print loses
 * nothing.
 *
 * <p>Hues follow the set of Okabe and Ito that people with colour-blind eyes can tell apart (sky blue, orange, vermillion,
 * bluish green), lightened for a dark sheet and darkened for paper. Source: M. Okabe, K. Ito, Color Universal Design
 * (2008), from memory; the exact shades are a design choice.
 */
enum Ink {
    SHEET(0x14171A, 0xFFFFFF),
    /** The picture's margins beyond the image. */
    OUTSIDE(0x23282D, 0xFFFFFF),
    /** Where the image would be. */
    TISSUE(0x000000, 0xF1F3F4),
    HALO(0x000000, 0xFFFFFF),
    TEXT(0xF2F4F5, 0x15181B),
    QUIET(0xAEB6BD, 0x555E66),
    SKIN(0xDDE2E6, 0x2A2F34),
    PLAN(0x6CC8F7, 0x005A96),
    OBSERVED(0xFFC04A, 0x8F5200),
    HAZARD(0xFF8C66, 0xAD3500),
    NERVE(0x4FD6A8, 0x006048);

    private final int overFrame;
    private final int alone;

    Ink(int overFrame, int alone) {
        this.overFrame = overFrame;
        this.alone = alone;
    }

    /** As 0xRRGGBB. */
    int rgb(Palette palette) {
        return palette == Palette.OVER_FRAME ? overFrame : alone;
    }
}
