// SPDX-License-Identifier: Apache-2.0
/** The case document and the answers as JSON, and the canonical form of both; the only place that knows their field names. */
@NullMarked
package dev.plumbline.document;

import org.jspecify.annotations.NullMarked;
