// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.NamedMark;
import java.util.List;
import java.util.Optional;

/** The scale that the numbers of a group were taken with. */
final class Scales {
    private Scales() {}

    /** Empty where nothing was marked, or where nothing tells the scale; a scale that contradicts the marks is refused. */
    static Optional<Calibration> of(FrameGeometry frame, List<NamedMark> marks) {
        boolean untold = frame.regions().isEmpty()
                && frame.pixelSpacing().isEmpty()
                && frame.statedScale().isEmpty();
        return marks.isEmpty() || untold ? Optional.empty() : Optional.of(frame.calibration(marks));
    }
}
