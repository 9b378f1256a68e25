// SPDX-License-Identifier: Apache-2.0
/**
 * The only package that knows the DICOM toolkit: files through the strict gate, frames in, structured report and
 * companions out. Shows our types only, so that the toolkit can be swapped.
 */
@NullMarked
package dev.plumbline.dicom;

import org.jspecify.annotations.NullMarked;
