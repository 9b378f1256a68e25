// SPDX-License-Identifier: Apache-2.0
/**
 * The store and the embedded archive: immutable DICOM files, the state beside them behind one port, and what a
 * DICOMweb door may ask of both. The files are the truth for DICOM objects; their index can be rebuilt from them.
 */
@NullMarked
package dev.plumbline.archive;

import org.jspecify.annotations.NullMarked;
