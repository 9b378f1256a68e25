// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.CaseInputs;
import dev.plumbline.geometry.Extents;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.MarkedFrame;
import dev.plumbline.geometry.NamedMark;
import dev.plumbline.geometry.NominalInputs;
import dev.plumbline.geometry.Orientation;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.SkinCourse;
import dev.plumbline.geometry.SpeedOfSound;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanInput;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * One frame with its scale and skin line: what every item of its drawing is placed by.
 *
 * @param axis empty where no skin line is marked and none can be taken from the image's edge
 * @param midpoint of the face on this frame; without it the axis starts above the target only
 * @param probe as stated
 */
record FrameView(
        FrameGeometry frame,
        Calibration calibration,
        Optional<SkinAxis> axis,
        Optional<PointPx> midpoint,
        Probe probe) {
    private static final String NO_POINTER = "";

    static FrameView planned(PlanInput input, Plan plan) {
        Calibration calibration = input.frame()
                .calibration(List.of(new NamedMark(NO_POINTER, input.marks().target())));
        Marks marks = new Marks(
                Optional.of(input.marks().target()),
                input.marks().skin(),
                input.probe().midpoint(),
                true);
        return of(input.frame(), calibration, marks, new Setting(input.probe(), plan));
    }

    /** Marks that the observed frame lacks are the plan's where the core takes them over too. */
    static FrameView observed(ObservationInput observed, PlanInput input, Plan plan) {
        ObservationMarks own = observed.marks();
        boolean inherits = observed.samePictureAsPlan() || observed.frame().sameGeometryAs(input.frame());
        Optional<PointPx> target =
                own.target().or(() -> inherits ? Optional.of(input.marks().target()) : Optional.empty());
        Marks marks = new Marks(
                target,
                own.skin().isEmpty() && inherits ? input.marks().skin() : own.skin(),
                own.midpoint().or(() -> inherits ? input.probe().midpoint() : Optional.empty()),
                own.skin().isEmpty() && inherits);
        List<NamedMark> measured = Stream.of(own.shaft().stream(), own.tip().stream(), target.stream())
                .flatMap(points -> points)
                .map(point -> new NamedMark(NO_POINTER, point))
                .toList();
        FrameGeometry frame = observed.frame();
        Calibration calibration = measured.isEmpty() ? frame.calibration() : frame.calibration(measured);
        return of(frame, calibration, marks, new Setting(input.probe(), plan));
    }

    /** @param edgeMayStand the edge of the image may stand for the skin line */
    private record Marks(
            Optional<PointPx> target, List<PointPx> skin, Optional<PointPx> midpoint, boolean edgeMayStand) {}

    private record Setting(Probe probe, Plan plan) {
        Orientation orientation() {
            Side side = probe.needleSide().orElseGet(() -> fromRight() ? Side.RIGHT : Side.LEFT);
            return new Orientation(side, probe.imageInverted().orElse(false));
        }

        private boolean fromRight() {
            return !(plan instanceof InPlanePlan inPlane)
                    || inPlane.line()
                            .map(line -> line.entry().column() >= line.target().column())
                            .orElse(true);
        }
    }

    private static FrameView of(FrameGeometry frame, Calibration shown, Marks marks, Setting setting) {
        Probe probe = setting.probe();
        Calibration calibration = SpeedOfSound.applied(probe.speedOfSoundMPerS(), shown);
        List<PointPx> skin = new ArrayList<>(marks.skin());
        if (skin.isEmpty() && marks.edgeMayStand() && probe.kind().equals(Optional.of(Probe.Kind.LINEAR))) {
            calibration.region().ifPresent(region -> skin.addAll(faceEdge(region, setting.orientation())));
        }
        CaseInputs<Gradient> inputs =
                new CaseInputs<>(new NominalInputs(), InputUncertainty.NOTHING_STATED, new Extents());
        Optional<SkinAxis> axis = new MarkedFrame<>(
                        frame,
                        calibration,
                        inputs.scale(frame, calibration),
                        marks.midpoint().map(inputs::mark),
                        marks.target().map(inputs::mark),
                        inputs.marks(skin),
                        false)
                .probeFrame(setting.orientation(), NO_POINTER)
                .map(found -> SkinAxis.of(
                        found,
                        calibration.pixel(),
                        probe.footprintMm().orElse(0) / 2,
                        new SkinAxis.Course(SkinCourse.of(probe), SkinCourse.isFlat(probe))));
        return new FrameView(frame, calibration, axis, marks.midpoint(), probe);
    }

    private static List<PointPx> faceEdge(Region region, Orientation orientation) {
        double row = orientation.inverted() ? region.maxRow() + 1 : region.minRow();
        return List.of(new PointPx(region.minColumn(), row), new PointPx(region.maxColumn() + 1.0, row));
    }

    /** Whether the axis starts at the probe's midpoint. */
    boolean midpointKnown() {
        return midpoint.isPresent();
    }

    /** How far below the skin line the middle of the face was marked; a curved face is pressed in. */
    double faceDepthMm() {
        return midpoint.flatMap(at -> axis.map(skin -> skin.w(at))).orElse(0.0);
    }

    /** From the probe's midpoint to the edge that entries are counted from. */
    OptionalDouble edgeMm() {
        OptionalDouble length = probe.housingLengthMm().isPresent() ? probe.housingLengthMm() : probe.footprintMm();
        return length.isPresent() ? OptionalDouble.of(length.getAsDouble() / 2) : length;
    }
}
