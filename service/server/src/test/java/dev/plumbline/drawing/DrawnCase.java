// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.needle.Needle;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.observation.Phase;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Constraints;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.Nerve;
import dev.plumbline.plan.PlanInput;
import dev.plumbline.plan.PlanMarks;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A frame to draw on, probe in its middle, and the case documents that can be made with it.
 *
 * @param skinRow row of the skin line under the probe's midpoint
 * @param tiltDeg of the skin line, falling to the right
 * @param side the needle comes from
 */
record DrawnCase(
        int columns,
        int rows,
        PixelSize pixel,
        double skinRow,
        double footprintMm,
        double tiltDeg,
        Side side,
        Approach approach) {
    /** The frame of the example in the case document's description: 38 mm wide and square. */
    static final DrawnCase SQUARE = linear(640, 640, new PixelSize(0.059375, 0.059375), 40, 38);

    static DrawnCase linear(int columns, int rows, PixelSize pixel, double skinRow, double footprintMm) {
        return new DrawnCase(columns, rows, pixel, skinRow, footprintMm, 0, Side.RIGHT, Approach.IN_PLANE);
    }

    DrawnCase tilted(double degrees) {
        return new DrawnCase(columns, rows, pixel, skinRow, footprintMm, degrees, side, approach);
    }

    DrawnCase fromLeft() {
        return new DrawnCase(columns, rows, pixel, skinRow, footprintMm, tiltDeg, Side.LEFT, approach);
    }

    DrawnCase outOfPlane() {
        return new DrawnCase(columns, rows, pixel, skinRow, footprintMm, tiltDeg, side, Approach.OUT_OF_PLANE);
    }

    /** Millimetres along the skin towards the needle and into the patient, as pixels; plain trigonometry. */
    PointPx at(double u, double w) {
        double cos = Math.cos(Math.toRadians(tiltDeg));
        double sin = Math.sin(Math.toRadians(tiltDeg));
        double right = side == Side.RIGHT ? u : -u;
        return new PointPx(
                columns / 2.0 + (right * cos - w * sin) / pixel.mmPerColumn(),
                skinRow + (right * sin + w * cos) / pixel.mmPerRow());
    }

    FrameGeometry frame() {
        UltrasoundRegion region = new UltrasoundRegion(
                new Region(0, 0, 0, columns - 1, rows - 1),
                1,
                1,
                OptionalInt.empty(),
                3,
                3,
                pixel.mmPerColumn() / 10,
                pixel.mmPerRow() / 10,
                OptionalInt.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
        return new FrameGeometry(columns, rows, List.of(region), Optional.empty(), Optional.empty(), "scanner");
    }

    PlanInput input(double depth, Optional<Intent> intent) {
        return input(depth, intent, new PlanMarks(at(0, depth), Optional.empty(), skin(), List.of(), List.of()));
    }

    PlanInput input(double depth, Optional<Intent> intent, PlanMarks marks) {
        Probe probe = new Probe(
                Optional.of(Probe.Kind.LINEAR),
                OptionalDouble.of(footprintMm),
                Optional.of(at(0, 0)),
                Optional.of(side),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                approach == Approach.OUT_OF_PLANE ? OptionalDouble.of(9) : OptionalDouble.empty(),
                Optional.empty());
        return new PlanInput(
                approach,
                frame(),
                probe,
                marks,
                new Needle(OptionalInt.of(22), OptionalDouble.of(80), Optional.empty()),
                intent,
                Constraints.NOTHING_STATED,
                InputUncertainty.NOTHING_STATED);
    }

    private List<PointPx> skin() {
        return List.of(at(-0.48 * footprintMm, 0), at(0.48 * footprintMm, 0));
    }

    static Optional<Intent> entry(double mm) {
        return Optional.of(new Intent.EntryDistance(mm));
    }

    static Optional<Intent> puncture(double mm) {
        return Optional.of(new Intent.PunctureDistance(mm));
    }

    /** The same marks with hazards and nerves. */
    static PlanInput with(PlanInput input, List<Nerve> nerves, List<Hazard> hazards) {
        PlanMarks marks = new PlanMarks(
                input.marks().target(),
                input.marks().targetKind(),
                input.marks().skin(),
                nerves,
                hazards);
        return new PlanInput(
                input.approach(),
                input.frame(),
                input.probe(),
                marks,
                input.needle(),
                input.intent(),
                input.constraints(),
                input.uncertainty());
    }

    static PlanInput withNeedle(PlanInput input, double lengthMm) {
        Needle needle = new Needle(OptionalInt.empty(), OptionalDouble.of(lengthMm), Optional.empty());
        return with(input, input.probe(), needle);
    }

    static PlanInput withSkin(PlanInput input, SkinBeyondProbe skin) {
        return with(input, with(input.probe(), Probe.Kind.LINEAR, skin, OptionalDouble.empty()), input.needle());
    }

    static PlanInput curved(PlanInput input, double arcRadiusMm) {
        SkinBeyondProbe flat = new SkinBeyondProbe.Flat();
        return with(
                input,
                with(input.probe(), Probe.Kind.CURVED, flat, OptionalDouble.of(arcRadiusMm)),
                new Needle(OptionalInt.of(20), OptionalDouble.of(150), Optional.empty()));
    }

    private static Probe with(Probe probe, Probe.Kind kind, SkinBeyondProbe skin, OptionalDouble arcRadiusMm) {
        return new Probe(
                Optional.of(kind),
                probe.footprintMm(),
                probe.midpoint(),
                probe.needleSide(),
                probe.beamThicknessMm(),
                Optional.of(skin),
                probe.housingLengthMm(),
                probe.housingHalfThicknessMm(),
                probe.imageInverted(),
                arcRadiusMm,
                probe.speedOfSoundMPerS());
    }

    private static PlanInput with(PlanInput input, Probe probe, Needle needle) {
        return new PlanInput(
                input.approach(),
                input.frame(),
                probe,
                input.marks(),
                needle,
                input.intent(),
                input.constraints(),
                input.uncertainty());
    }

    static Comparison planned(PlanInput input) {
        return Comparison.of(input, List.of());
    }

    /** A straight shaft from the skin to its end, marked at two points. */
    ObservationInput observed(double entry, PointPx end, boolean endIsTip) {
        PointPx skin = at(entry, 0);
        return observed(
                List.of(between(skin, end, 0.55), between(skin, end, 0.95)), end, endIsTip, OptionalDouble.empty());
    }

    /** Out-of-plane: the dot. */
    ObservationInput dot(PointPx dot, double punctureDistanceMm) {
        return observed(List.of(), dot, false, OptionalDouble.of(punctureDistanceMm));
    }

    private ObservationInput observed(
            List<PointPx> shaft, PointPx end, boolean endIsTip, OptionalDouble punctureDistanceMm) {
        ObservationMarks marks = new ObservationMarks(
                "obs-1",
                Optional.of(Phase.FINAL_TIP),
                shaft,
                Optional.of(end),
                Optional.of(endIsTip),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                punctureDistanceMm);
        return new ObservationInput(marks, frame(), true);
    }

    static PointPx between(PointPx from, PointPx to, double share) {
        return new PointPx(
                from.column() + share * (to.column() - from.column()), from.row() + share * (to.row() - from.row()));
    }

    /** An artery, and a rib where the frame is deep enough for it. */
    List<Hazard> hazards() {
        Hazard artery = new Hazard("artery", Hazard.Kind.ARTERY, OptionalDouble.of(2), new Shape.Disc(at(-9, 14), 3));
        List<PointPx> outline = List.of(at(-15, 30), at(-6, 28.5), at(4, 29.5), at(9, 32), at(3, 34), at(-14, 33));
        Hazard rib = new Hazard("first rib", Hazard.Kind.BONE, OptionalDouble.of(1.5), new Shape.Outline(outline));
        return outline.stream().allMatch(frame()::holds) ? List.of(artery, rib) : List.of(artery);
    }

    List<Nerve> nerves(double depth) {
        return List.of(
                new Nerve("median", new Shape.Disc(at(-3.4, depth), 2)),
                new Nerve(
                        "ulnar nerve",
                        new Shape.Outline(List.of(
                                at(-8, depth + 3), at(-5, depth + 2.4), at(-4.4, depth + 4), at(-7, depth + 5.4)))));
    }
}
