// SPDX-License-Identifier: Apache-2.0
/** Observation minus plan, with its uncertainty. */
@NullMarked
package dev.plumbline.deviation;

import org.jspecify.annotations.NullMarked;
