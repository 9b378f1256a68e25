// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** A quantity the program can give: its field name in every answer and its unit. Each package lists its own as an enum. */
public interface Measurand {
    /** Field name in JSON, such as {@code angleToSkinDeg}; the unit is in the name. */
    String field();

    Unit unit();
}
