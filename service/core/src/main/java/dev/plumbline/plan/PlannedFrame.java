// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.CaseInputs;
import dev.plumbline.geometry.MarkPx;
import dev.plumbline.geometry.MarkedFrame;
import dev.plumbline.geometry.NamedMark;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.SpeedOfSound;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/** The frame a plan is made on, with its marks as inputs of the case. */
final class PlannedFrame {
    private PlannedFrame() {}

    static Calibration calibration(PlanInput input) {
        return SpeedOfSound.applied(
                input.probe().speedOfSoundMPerS(),
                input.frame()
                        .calibration(List.of(
                                new NamedMark("/marks/target", input.marks().target()))));
    }

    static <T extends RealFieldElement<T>> MarkedFrame<T> of(
            PlanInput input, Calibration calibration, CaseInputs<T> inputs) {
        List<PointPx> assumed = input.marks().skin().isEmpty() ? assumedSkin(input.probe(), calibration) : List.of();
        List<MarkPx<T>> skin = assumed.isEmpty()
                ? inputs.marks(input.marks().skin())
                : assumed.stream().map(inputs::assumedMark).toList();
        return new MarkedFrame<>(
                input.frame(),
                calibration,
                inputs.scale(input.frame(), calibration),
                input.probe().midpoint().map(inputs::mark),
                Optional.of(inputs.mark(input.marks().target())),
                skin,
                !assumed.isEmpty());
    }

    /** A linear array's face lies along the edge of what it shows; of any other nothing is known. */
    private static List<PointPx> assumedSkin(Probe probe, Calibration calibration) {
        if (!probe.kind().equals(Optional.of(Probe.Kind.LINEAR))
                || calibration.region().isEmpty()) {
            return List.of();
        }
        Region region = calibration.region().get();
        int row = probe.imageInverted().orElse(false) ? region.maxRow() + 1 : region.minRow();
        return List.of(new PointPx(region.minColumn(), row), new PointPx(region.maxColumn() + 1.0, row));
    }
}
