// SPDX-License-Identifier: Apache-2.0
/**
 * Marks that a person drew in other software, on their way into a case: what each one means by the site's rules, what holds
 * where several say the same, and what only a person can answer. Their numbers are never taken, only their points.
 */
@NullMarked
package dev.plumbline.intake;

import org.jspecify.annotations.NullMarked;
