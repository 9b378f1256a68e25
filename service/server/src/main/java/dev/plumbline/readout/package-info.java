// SPDX-License-Identifier: Apache-2.0
/**
 * A record as people read it: plain text, a page for a browser, a sheet of paper. What is said comes in as words; nothing
 * is computed here.
 */
@NullMarked
package dev.plumbline.readout;

import org.jspecify.annotations.NullMarked;
