// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

/** Whether the needle is meant to run along the image plane or to cross it. */
public enum Approach {
    IN_PLANE("inPlane"),
    OUT_OF_PLANE("outOfPlane");

    private final String word;

    Approach(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
