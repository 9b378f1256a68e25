// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.PixelSize;
import java.util.List;

/**
 * What there is to see on one frame, before any size, colour or place for words is chosen.
 *
 * @param columns width of the frame in pixels
 * @param rows height of the frame in pixels
 * @param pixel size of a pixel in millimetres
 * @param items in frame pixels, from the bottom to the top
 * @param notes beside the picture, from top to bottom
 * @param description the whole in words, for readers who do not see it
 */
public record Scene(
        int columns,
        int rows,
        PixelSize pixel,
        List<Item> items,
        List<Note> notes,
        String title,
        Standing standing,
        String description) {
    public Scene {
        items = List.copyOf(items);
        notes = List.copyOf(notes);
    }

    /** The same scene as part of a record that a person has signed; without this it says that it is a draft. */
    public Scene signed() {
        return new Scene(columns, rows, pixel, items, notes, title, Standing.SIGNED, description);
    }
}
