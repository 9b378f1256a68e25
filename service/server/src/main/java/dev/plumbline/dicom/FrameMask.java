// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.UltrasoundRegion;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;

/**
 * A frame with everything outside its ultrasound regions black: captions there often name the patient. What is burnt into
 * a region stays, so a person must still look.
 */
final class FrameMask {
    private FrameMask() {}

    static BufferedImage of(BufferedImage frame, FrameGeometry geometry) {
        if (geometry.regions().isEmpty()) {
            throw Fault.unsupported(
                    "The frame has no " + Fault.name(Tag.SEQUENCE_OF_ULTRASOUND_REGIONS)
                            + ", so it does not tell where the ultrasound ends and captions begin",
                    "Mask it by hand, or export a frame with regions.");
        }
        BufferedImage masked = new BufferedImage(frame.getWidth(), frame.getHeight(), frame.getType());
        Graphics2D pen = masked.createGraphics();
        for (UltrasoundRegion region : geometry.regions()) {
            Region bounds = region.bounds();
            pen.setClip(
                    bounds.minColumn(),
                    bounds.minRow(),
                    bounds.maxColumn() - bounds.minColumn() + 1,
                    bounds.maxRow() - bounds.minRow() + 1);
            pen.drawImage(frame, 0, 0, null);
        }
        pen.dispose();
        return masked;
    }
}
