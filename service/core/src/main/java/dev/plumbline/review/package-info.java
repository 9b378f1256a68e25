// SPDX-License-Identifier: Apache-2.0
/** Looking back over many records: proportions, and how far observers who measured the same thing agree. */
@NullMarked
package dev.plumbline.review;

import org.jspecify.annotations.NullMarked;
