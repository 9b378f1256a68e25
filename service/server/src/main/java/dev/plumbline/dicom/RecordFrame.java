// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Instance;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.KnownDistance;
import java.awt.image.BufferedImage;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A frame that a record speaks of.
 *
 * @param header attributes of the object it is a frame of; pixel data is not needed
 * @param geometry its size and scale
 * @param rendered the frame as an image, nothing drawn on it
 */
public record RecordFrame(DataSet header, FrameGeometry geometry, BufferedImage rendered) {
    /** The same frame with a scale that a person states; with none, the frame as it is. */
    RecordFrame with(Optional<KnownDistance> scale) {
        return new RecordFrame(header, geometry.with(scale), rendered);
    }

    /** The frame as a report names it: with its number only where the object has frames (C.17.3.5). */
    Instance instance(int frameNumber) {
        return new Instance(
                header.string(Tag.SOP_CLASS_UID).orElseThrow(),
                header.string(Tag.SOP_INSTANCE_UID).orElseThrow(),
                header.holds(Tag.NUMBER_OF_FRAMES) ? OptionalInt.of(frameNumber) : OptionalInt.empty());
    }
}
