// SPDX-License-Identifier: Apache-2.0
/** The intended path and everything derived from it. */
@NullMarked
package dev.plumbline.plan;

import org.jspecify.annotations.NullMarked;
