// SPDX-License-Identifier: Apache-2.0
/** Finding a needle that is not seen: the ladder of single actions, and the signs at which to stop. */
@NullMarked
package dev.plumbline.sight;

import org.jspecify.annotations.NullMarked;
