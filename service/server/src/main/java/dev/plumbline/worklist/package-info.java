// SPDX-License-Identifier: Apache-2.0
/** What is scheduled: asked of another system by modality worklist (DICOM PS3.4, annex K), read-only. */
@NullMarked
package dev.plumbline.worklist;

import org.jspecify.annotations.NullMarked;
