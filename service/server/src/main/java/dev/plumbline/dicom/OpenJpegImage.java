// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.sun.jna.Native;
import com.sun.jna.Pointer;
import java.io.IOException;

/**
 * {@code opj_image_t} and {@code opj_image_comp_t} by their places in memory. Source: openjpeg.h of version 2.5 with its
 * layout on machines with 64-bit pointers.
 */
final class OpenJpegImage {
    private static final int COMPONENT_COUNT = 16;
    private static final int COMPONENTS = 24;
    private static final int COMPONENT_BYTES = 64;
    private static final int DX = 0;
    private static final int DY = 4;
    private static final int WIDTH = 8;
    private static final int HEIGHT = 12;
    private static final int PRECISION = 24;
    private static final int SIGNED = 32;
    private static final int DATA = 48;
    private static final int MOST_COMPONENTS = 4;
    private static final int MOST_BITS = 16;

    private final Pointer image;

    OpenJpegImage(Pointer image) {
        if (Native.POINTER_SIZE != Long.BYTES) {
            throw new IllegalStateException("JPEG 2000 is decoded on 64-bit machines only.");
        }
        this.image = image;
    }

    /** Before the library allocates by it. */
    void check() throws IOException {
        int count = image.getInt(COMPONENT_COUNT);
        if (count < 1 || count > MOST_COMPONENTS) {
            throw new IOException("The image has " + count + " components.");
        }
        for (int i = 0; i < count; i++) {
            Pointer component = component(i);
            boolean whole = component.getInt(DX) == 1 && component.getInt(DY) == 1;
            boolean bounded = inside(component.getInt(WIDTH), PixelShape.MAX_SIDE)
                    && inside(component.getInt(HEIGHT), PixelShape.MAX_SIDE)
                    && inside(component.getInt(PRECISION), MOST_BITS);
            if (!whole || !bounded) {
                throw new IOException("The image is too large, too deep or has components of several sizes.");
            }
        }
    }

    private static boolean inside(int value, int largest) {
        return value > 0 && value <= largest;
    }

    DecodedPlanes planes() throws IOException {
        int count = image.getInt(COMPONENT_COUNT);
        int width = component(0).getInt(WIDTH);
        int height = component(0).getInt(HEIGHT);
        int[][] planes = new int[count][];
        for (int i = 0; i < count; i++) {
            planes[i] = plane(component(i), width, height);
        }
        return new DecodedPlanes(width, height, component(0).getInt(PRECISION), planes);
    }

    /** Samples cut to their own bits, so that signed ones become two's complement. */
    private static int[] plane(Pointer component, int width, int height) throws IOException {
        Pointer data = component.getPointer(DATA);
        if (data == null || component.getInt(WIDTH) != width || component.getInt(HEIGHT) != height) {
            throw new IOException("The image has components of several sizes.");
        }
        int[] samples = data.getIntArray(0, width * height);
        boolean signed = component.getInt(SIGNED) == 1;
        int mask = signed && component.getInt(PRECISION) > 8 ? 0xffff : (1 << component.getInt(PRECISION)) - 1;
        for (int i = 0; i < samples.length; i++) {
            samples[i] &= mask;
        }
        return samples;
    }

    private Pointer component(int index) {
        return image.getPointer(COMPONENTS).share((long) index * COMPONENT_BYTES);
    }
}
