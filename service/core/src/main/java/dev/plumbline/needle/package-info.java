// SPDX-License-Identifier: Apache-2.0
/** The needle as a piece of equipment. */
@NullMarked
package dev.plumbline.needle;

import org.jspecify.annotations.NullMarked;
