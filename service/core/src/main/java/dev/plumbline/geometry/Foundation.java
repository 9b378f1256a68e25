// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/**
 * What a figure in a data file rests on.
 *
 * @param text the citation, or in words where the figure comes from
 */
public record Foundation(Standing standing, String text) {
    public Foundation {
        if (text.isBlank()) {
            throw new IllegalArgumentException("A foundation says where the figure comes from.");
        }
    }
}
