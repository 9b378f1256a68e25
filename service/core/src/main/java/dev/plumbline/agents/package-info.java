// SPDX-License-Identifier: Apache-2.0
/** What was drawn up and given, in exact decimals, and its share of the limits that a site has approved. */
@NullMarked
package dev.plumbline.agents;

import org.jspecify.annotations.NullMarked;
