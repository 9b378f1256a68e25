// SPDX-License-Identifier: Apache-2.0
/** What a caller can mend: a sealed list of problems, thrown inside one exception. */
@NullMarked
package dev.plumbline.problem;

import org.jspecify.annotations.NullMarked;
