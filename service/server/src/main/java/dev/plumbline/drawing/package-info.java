// SPDX-License-Identifier: Apache-2.0
/**
 * Drawings of a plan and of what was observed, over a frame or alone, as SVG and as PNG from one scene description.
 *
 * <p>{@link dev.plumbline.drawing.PlanDrawing} turns results into a {@link dev.plumbline.drawing.Scene} (what there is to
 * see, in frame pixels); {@code Layout} turns a scene into a {@code Sheet} (traces, ovals and words at their places), which
 * {@link dev.plumbline.drawing.SvgDrawing} and {@link dev.plumbline.drawing.RasterDrawing} write out. Nothing is measured
 * here: every number comes from the core's results.
 */
@NullMarked
package dev.plumbline.drawing;

import org.jspecify.annotations.NullMarked;
