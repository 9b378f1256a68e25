// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/** A picture being drawn: black at first, three bytes a dot. */
final class Screen {
    final int columns;
    final int rows;
    private final byte[] rgb;

    Screen(int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
        this.rgb = new byte[3 * columns * rows];
    }

    void dot(int column, int row, int grey) {
        dot(column, row, new Ink(grey, grey, grey));
    }

    void dot(int column, int row, Ink ink) {
        if (0 <= column && column < columns && 0 <= row && row < rows) {
            int i = 3 * (row * columns + column);
            rgb[i] = (byte) ink.red;
            rgb[i + 1] = (byte) ink.green;
            rgb[i + 2] = (byte) ink.blue;
        }
    }

    void text(String text, int column, int row, Ink ink) {
        for (int k = 0; k < text.length(); k++) {
            letter(text.charAt(k), column + k * (Glyphs.WIDTH + 1), row, ink);
        }
    }

    private void letter(char letter, int column, int row, Ink ink) {
        for (int y = 0; y < Glyphs.HEIGHT; y++) {
            for (int x = 0; x < Glyphs.WIDTH; x++) {
                if (Glyphs.isDot(letter, x, y)) {
                    dot(column + x, row + y, ink);
                }
            }
        }
    }

    int red(int column, int row) {
        return rgb[3 * (row * columns + column)] & 0xff;
    }

    SampleFrame asGrey() {
        byte[] grey = new byte[columns * rows];
        for (int i = 0; i < grey.length; i++) {
            grey[i] = rgb[3 * i];
        }
        return new SampleFrame(columns, rows, 1, grey);
    }

    SampleFrame asColour() {
        return new SampleFrame(columns, rows, 3, rgb);
    }

    /** A colour, each part 0 to 255. */
    record Ink(int red, int green, int blue) {
        static final Ink PALE = new Ink(196, 196, 196);
        static final Ink DIM = new Ink(128, 128, 128);
    }
}
