// SPDX-License-Identifier: Apache-2.0
/** The path measured on a saved frame. */
@NullMarked
package dev.plumbline.observation;

import org.jspecify.annotations.NullMarked;
