// SPDX-License-Identifier: Apache-2.0
/** Wires everything by constructors; the only package that sees all and the only one that creates clocks and random ids. */
@NullMarked
package dev.plumbline.app;

import org.jspecify.annotations.NullMarked;
