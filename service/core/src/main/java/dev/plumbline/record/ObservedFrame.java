// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.observation.ObservationMarks;

/** An observation as it stands in the case: its marks and the frame they were made on. */
public record ObservedFrame(ObservationMarks marks, FrameRef frame) {}
