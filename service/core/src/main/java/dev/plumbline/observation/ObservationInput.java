// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

import dev.plumbline.geometry.FrameGeometry;

/**
 * One observation with the frame it was made on.
 *
 * @param samePictureAsPlan the frame is the very frame the plan was made on
 */
public record ObservationInput(ObservationMarks marks, FrameGeometry frame, boolean samePictureAsPlan) {}
