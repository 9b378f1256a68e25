// SPDX-License-Identifier: Apache-2.0
/** Points, lengths, angles, the scale of a frame and the uncertainty of what is measured on it. Millimetres and radians. */
@NullMarked
package dev.plumbline.geometry;

import org.jspecify.annotations.NullMarked;
