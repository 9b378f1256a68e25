// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** A side of the displayed image: right is the direction of increasing column. */
public enum Side {
    LEFT("left"),
    RIGHT("right");

    private final String word;

    Side(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
