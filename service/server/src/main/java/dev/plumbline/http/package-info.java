// SPDX-License-Identifier: Apache-2.0
/** The HTTP doors: the interface of our own under {@code /v1} and DICOMweb under {@code /dicomweb}. */
@NullMarked
package dev.plumbline.http;

import org.jspecify.annotations.NullMarked;
