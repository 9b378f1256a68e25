// SPDX-License-Identifier: Apache-2.0
/** The case and its signed revisions as plain values, and the identifiers derived from them. */
@NullMarked
package dev.plumbline.record;

import org.jspecify.annotations.NullMarked;
