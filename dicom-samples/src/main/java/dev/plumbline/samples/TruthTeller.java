// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.Nerve;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** Works out what a frame of a scene shows, with the probe moved to the right by some millimetres. */
final class TruthTeller {
    private static final int FORMAT_2D = 1;
    private static final int TISSUE = 1;
    private static final int COLOUR_FLOW = 2;
    private static final int CM = 3;
    private static final double MM_PER_CM = 10;

    private final SampleScene scene;
    private final SamplePane pane;
    private final Transducer transducer;
    private final double movedMm;

    TruthTeller(SampleScene scene, double movedMm) {
        this.scene = scene;
        this.pane = scene.panes().get(0);
        this.transducer = pane.machine().transducer();
        this.movedMm = movedMm;
    }

    SampleTruth tell(Optional<NeedlePose> needle) {
        ScanPoint target = seen(pane.anatomy().target());
        double depth = pane.anatomy().target().depthMm() - transducer.skinDepthMm();
        return new SampleTruth(
                new SampleTruth.Scale(regions(), pixelSpacing()),
                pane.area().pixel(),
                probe(),
                skin(),
                new SampleTruth.TargetTruth(px(target), pane.anatomy().targetKind(), depth, target.acrossMm()),
                needle.flatMap(this::needle),
                new SampleTruth.Structures(nerves(), hazards()));
    }

    private ScanPoint seen(ScanPoint inBody) {
        return inBody.plus(-movedMm, 0);
    }

    private PointPx px(ScanPoint place) {
        return pane.area().toPx(place);
    }

    private List<UltrasoundRegion> regions() {
        return scene.layout().scale() == SampleScene.ScaleStatement.REGIONS
                ? scene.panes().stream().flatMap(TruthTeller::regionsOf).toList()
                : List.of();
    }

    private Optional<PixelSize> pixelSpacing() {
        return scene.layout().scale() == SampleScene.ScaleStatement.PIXEL_SPACING
                ? Optional.of(pane.area().pixel())
                : Optional.empty();
    }

    private static Stream<UltrasoundRegion> regionsOf(SamplePane pane) {
        UltrasoundRegion tissue = region(pane.area(), pane.area().bounds(), TISSUE);
        Optional<UltrasoundRegion> flow = pane.flow().map(colours -> region(pane.area(), colours.box(), COLOUR_FLOW));
        return Stream.concat(Stream.of(tissue), flow.stream());
    }

    /** Origin of the physical axes: the pixel at the middle of the face. Only tissue has priority where regions overlap. */
    private static UltrasoundRegion region(ImageArea area, Region bounds, int dataType) {
        PointPx origin = area.toPx(new ScanPoint(0, 0));
        int column = (int) Math.floor(origin.column()) - bounds.minColumn();
        int row = (int) Math.floor(origin.row()) - bounds.minRow();
        ScanPoint center = area.toPlace(new PointPx(bounds.minColumn() + column + 0.5, bounds.minRow() + row + 0.5));
        return new UltrasoundRegion(
                bounds,
                FORMAT_2D,
                dataType,
                OptionalInt.of(dataType == TISSUE ? 0 : 1),
                CM,
                CM,
                area.pixel().mmPerColumn() / MM_PER_CM,
                area.pixel().mmPerRow() / MM_PER_CM,
                OptionalInt.of(column),
                OptionalInt.of(row),
                OptionalDouble.of(center.acrossMm() / MM_PER_CM),
                OptionalDouble.of(center.depthMm() / MM_PER_CM));
    }

    private SampleTruth.ProbeTruth probe() {
        Optional<SampleTruth.FaceArc> face = Optional.empty();
        if (transducer instanceof Transducer.Curved curved) {
            face = Optional.of(new SampleTruth.FaceArc(
                    px(new ScanPoint(0, -curved.radiusMm())), curved.radiusMm(), Math.toDegrees(curved.halfAngle())));
        }
        return new SampleTruth.ProbeTruth(transducer.kind(), transducer.footprintMm(), px(new ScanPoint(0, 0)), face);
    }

    /** Between the ends of the face. */
    private List<PointPx> skin() {
        double half = transducer.footprintMm() / 2;
        return List.of(
                px(new ScanPoint(-half, transducer.skinDepthMm())), px(new ScanPoint(half, transducer.skinDepthMm())));
    }

    private Optional<SampleTruth.NeedleTruth> needle(NeedlePose pose) {
        if (pose instanceof InPlaneNeedle shaft) {
            return shaft.shows(transducer) ? Optional.of(shaft(shaft)) : Optional.empty();
        }
        return Optional.of(crossing((CrossingNeedle) pose));
    }

    private SampleTruth.NeedleTruth shaft(InPlaneNeedle needle) {
        double path = needle.pathMm(transducer);
        double first = needle.firstSeenBehindTipMm(transducer);
        ScanPoint entry = seen(needle.entry(transducer));
        double shallow = Math.min(first, (1 - needle.seen().from()) * first);
        double deep = Math.max(0, (1 - needle.seen().to()) * first);
        return new SampleTruth.NeedleTruth(
                Approach.IN_PLANE,
                Optional.of(needle.from()),
                px(seen(needle.tip())),
                Optional.of(px(entry)),
                List.of(px(seen(needle.behindTip(shallow))), px(seen(needle.behindTip(deep)))),
                needle.seen().hasTip(),
                new SampleTruth.NeedleLengths(
                        needle.angleToSkinDeg(),
                        OptionalDouble.of(needle.sign() * entry.acrossMm()),
                        OptionalDouble.empty(),
                        needle.tip().depthMm() - transducer.skinDepthMm(),
                        path));
    }

    private SampleTruth.NeedleTruth crossing(CrossingNeedle needle) {
        double depth = needle.crossing().depthMm() - transducer.skinDepthMm();
        double distance = needle.punctureDistanceMm();
        return new SampleTruth.NeedleTruth(
                Approach.OUT_OF_PLANE,
                Optional.empty(),
                px(seen(needle.crossing())),
                Optional.empty(),
                List.of(),
                true,
                new SampleTruth.NeedleLengths(
                        needle.angleToSkinDeg(),
                        OptionalDouble.empty(),
                        OptionalDouble.of(distance),
                        depth,
                        Math.sqrt(depth * depth + distance * distance)));
    }

    private List<Nerve> nerves() {
        List<Nerve> nerves = new ArrayList<>();
        for (Anatomy.Outlined outlined : pane.anatomy().outlines()) {
            if (outlined.hazard().isEmpty()) {
                nerves.add(new Nerve(outlined.name(), outline(outlined)));
            }
        }
        return nerves;
    }

    private List<Hazard> hazards() {
        List<Hazard> hazards = new ArrayList<>();
        for (Anatomy.Outlined outlined : pane.anatomy().outlines()) {
            outlined.hazard()
                    .ifPresent(kind ->
                            hazards.add(new Hazard(outlined.name(), kind, OptionalDouble.empty(), outline(outlined))));
        }
        return hazards;
    }

    /** Corners are kept inside the picture, as a person can only mark what is on it. */
    private Shape.Outline outline(Anatomy.Outlined outlined) {
        return new Shape.Outline(outlined.outline().stream()
                .map(corner -> px(seen(corner)))
                .map(corner -> new PointPx(
                                Math.max(0, Math.min(scene.layout().columns(), corner.column())),
                                Math.max(0, Math.min(scene.layout().rows(), corner.row())))
                        .onGrid())
                .toList());
    }
}
