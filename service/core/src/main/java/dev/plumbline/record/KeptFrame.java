// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

/**
 * A frame that is kept with a case for what it shows; nothing need be marked on it.
 *
 * @param frame without a scale of its own, as nothing is measured here
 */
public record KeptFrame(FrameRef frame, FrameRole role) {}
