// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.NamedMark;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.SpeedOfSound;
import java.util.List;
import java.util.Optional;

/** The scale that the numbers of a group were taken with: the one the comparison used for the same marks. */
final class Scales {
    private Scales() {}

    /**
     * The scale for marks that were measured before, for the speed of sound stated for the probe if there is one.
     *
     * @return empty where nothing was marked, or where nothing tells the scale
     */
    static Optional<Calibration> of(FrameGeometry frame, Probe probe, List<PointPx> marks) {
        boolean untold = frame.regions().isEmpty()
                && frame.pixelSpacing().isEmpty()
                && frame.statedScale().isEmpty()
                && frame.knownDistance().isEmpty();
        if (marks.isEmpty() || untold) {
            return Optional.empty();
        }
        return Optional.of(SpeedOfSound.applied(
                probe.speedOfSoundMPerS(),
                frame.calibration(
                        marks.stream().map(at -> new NamedMark("/frame", at)).toList())));
    }
}
