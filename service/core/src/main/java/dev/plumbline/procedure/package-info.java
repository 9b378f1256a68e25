// SPDX-License-Identifier: Apache-2.0
/** What was done, by whom and when: checks, stop moments, an append-only log, what follows from it, and what is missing. */
@NullMarked
package dev.plumbline.procedure;

import org.jspecify.annotations.NullMarked;
