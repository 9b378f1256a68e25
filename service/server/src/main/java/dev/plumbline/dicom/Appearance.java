// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.KnownDistance;
import java.util.Optional;

/**
 * How one frame is shown. Nothing of this touches the stored object.
 *
 * @param window instead of what the object states, for grey frames
 * @param masked everything outside the ultrasound regions is black, for teaching
 * @param regions the regions and the middle of the probe's face are drawn, with the scale bar where there is a scale
 * @param scaleBar a bar of known length is drawn
 * @param scale stated by a person for a frame without one
 */
public record Appearance(
        Optional<Window> window, boolean masked, boolean regions, boolean scaleBar, Optional<KnownDistance> scale) {
    /** As the object says. */
    public static final Appearance PLAIN = new Appearance(Optional.empty(), false, false, false, Optional.empty());

    /** In another window. */
    public Appearance with(Optional<Window> other) {
        return new Appearance(other, masked, regions, scaleBar, scale);
    }
}
