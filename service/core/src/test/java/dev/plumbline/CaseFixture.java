// SPDX-License-Identifier: Apache-2.0
package dev.plumbline;

import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Region;
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
import dev.plumbline.plan.TargetKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A case in millimetres: the probe's midpoint lies at (0, 0) with the skin level through it, u to the right, w down. The
 * frame has 0.05 mm pixels on both axes unless another scale is set, and its midpoint is pixel (1000, 100).
 */
public final class CaseFixture {
    public static final double MID_COLUMN = 1000;
    public static final double MID_ROW = 100;

    public double mmPerColumn = 0.05;
    public double mmPerRow = 0.05;
    public int columns = 2000;
    public int rows = 2000;
    public boolean withRegion = true;
    public String equipment = "array-1";
    public Approach approach = Approach.IN_PLANE;
    public Optional<Probe.Kind> kind = Optional.of(Probe.Kind.LINEAR);
    public OptionalDouble footprint = OptionalDouble.of(38);
    public boolean midpoint = true;
    public Optional<Side> side = Optional.of(Side.RIGHT);
    public Optional<SkinBeyondProbe> skinBeyond = Optional.empty();
    public OptionalDouble housingLength = OptionalDouble.empty();
    public OptionalDouble housingHalfThickness = OptionalDouble.empty();
    public OptionalDouble beamThickness = OptionalDouble.empty();
    public OptionalDouble arcRadius = OptionalDouble.empty();
    public OptionalDouble speedOfSound = OptionalDouble.empty();
    public double targetU;
    public double targetW = 30;
    public boolean skin = true;
    public OptionalDouble needleLength = OptionalDouble.empty();
    public Optional<Intent> intent = Optional.empty();
    public Constraints constraints = Constraints.NOTHING_STATED;
    public InputUncertainty uncertainty = InputUncertainty.NOTHING_STATED;
    public final List<Hazard> hazards = new ArrayList<>();
    public final List<Nerve> nerves = new ArrayList<>();

    /** Pixel of a point given in the probe frame. */
    public PointPx at(double u, double w) {
        double sign = side.equals(Optional.of(Side.LEFT)) ? -1 : 1;
        return new PointPx(MID_COLUMN + sign * u / mmPerColumn, MID_ROW + w / mmPerRow);
    }

    public List<PointPx> skinMarks() {
        return List.of(new PointPx(0, MID_ROW), new PointPx(columns, MID_ROW));
    }

    public FrameGeometry frame() {
        UltrasoundRegion region = new UltrasoundRegion(
                new Region(0, 0, 0, columns - 1, rows - 1),
                1,
                1,
                OptionalInt.empty(),
                3,
                3,
                mmPerColumn / 10,
                mmPerRow / 10,
                OptionalInt.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
        return new FrameGeometry(
                columns,
                rows,
                withRegion ? List.of(region) : List.of(),
                Optional.empty(),
                withRegion ? Optional.empty() : Optional.of(new PixelSize(mmPerColumn, mmPerRow)),
                equipment);
    }

    public Probe probe() {
        return new Probe(
                kind,
                footprint,
                midpoint ? Optional.of(at(0, 0)) : Optional.empty(),
                side,
                beamThickness,
                skinBeyond,
                housingLength,
                housingHalfThickness,
                Optional.empty(),
                arcRadius,
                speedOfSound);
    }

    public PlanInput input() {
        return new PlanInput(
                approach,
                frame(),
                probe(),
                new PlanMarks(
                        at(targetU, targetW),
                        Optional.of(TargetKind.NEAR_NERVE),
                        skin ? skinMarks() : List.of(),
                        nerves,
                        hazards),
                new Needle(OptionalInt.of(22), needleLength, Optional.empty()),
                intent,
                constraints,
                uncertainty);
    }

    public CaseFixture intent(Intent stated) {
        intent = Optional.of(stated);
        return this;
    }

    /** On the planned picture, with shaft and tip where they are given. */
    public ObservationInput observed(List<PointPx> shaft, Optional<PointPx> tip, boolean tipIsTip) {
        return new ObservationInput(
                new ObservationMarks(
                        "obs-1",
                        Optional.of(Phase.FINAL_TIP),
                        shaft,
                        tip,
                        Optional.of(tipIsTip),
                        Optional.empty(),
                        Optional.empty(),
                        List.of(),
                        OptionalDouble.empty()),
                frame(),
                true);
    }
}
