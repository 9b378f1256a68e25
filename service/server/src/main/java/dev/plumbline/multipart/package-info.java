// SPDX-License-Identifier: Apache-2.0
/** Bodies of several parts, as DICOMweb sends them both ways: read and written part by part, never held. */
@NullMarked
package dev.plumbline.multipart;

import org.jspecify.annotations.NullMarked;
