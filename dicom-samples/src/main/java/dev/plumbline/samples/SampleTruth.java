// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.Nerve;
import dev.plumbline.plan.TargetKind;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one frame really shows: the marks a person with perfect sight would put on it, and the lengths behind them.
 *
 * @param scale what the object states about its scale
 * @param pixel true size of a pixel in the first region, stated or not
 * @param skin two marks on the skin beside or under the face, as far as the picture goes
 * @param target where the tip was meant to stop
 * @param needle none where there is no needle in the body or none in the beam at all
 */
public record SampleTruth(
        Scale scale,
        PixelSize pixel,
        ProbeTruth probe,
        List<PointPx> skin,
        TargetTruth target,
        Optional<NeedleTruth> needle,
        Structures structures) {
    public SampleTruth {
        skin = List.copyOf(skin);
    }

    /** The object's own statements. */
    public record Scale(List<UltrasoundRegion> regions, Optional<PixelSize> pixelSpacing) {
        public Scale {
            regions = List.copyOf(regions);
        }
    }

    /** The probe; the arc only for a curved face. */
    public record ProbeTruth(Probe.Kind kind, double footprintMm, PointPx midpoint, Optional<FaceArc> face) {}

    /** The face on the picture: a circle through it and half the angle it spans. */
    public record FaceArc(PointPx center, double radiusMm, double halfAngleDeg) {}

    /**
     * The target.
     *
     * @param depthMm below the skin line
     * @param acrossMm from the probe's midpoint along the skin, positive to the right of the picture
     */
    public record TargetTruth(PointPx at, TargetKind kind, double depthMm, double acrossMm) {}

    /**
     * The needle.
     *
     * @param end the tip, or where the needle crosses the plane
     * @param entry in-plane only; may lie beside the picture
     * @param visible two ends of the part that can be seen, shallow one first; empty out-of-plane or where nothing is
     * @param tipVisible the tip lies in the beam
     */
    public record NeedleTruth(
            Approach approach,
            Optional<Side> from,
            PointPx end,
            Optional<PointPx> entry,
            List<PointPx> visible,
            boolean tipVisible,
            NeedleLengths lengths) {
        public NeedleTruth {
            visible = List.copyOf(visible);
        }
    }

    /**
     * The needle in lengths and angles.
     *
     * @param entryDistanceMm in-plane: from the probe's midpoint along the skin, positive to the needle's side
     * @param punctureDistanceMm out-of-plane: on the skin, to the plane
     * @param endDepthMm of tip or crossing below the skin
     */
    public record NeedleLengths(
            double angleToSkinDeg,
            OptionalDouble entryDistanceMm,
            OptionalDouble punctureDistanceMm,
            double endDepthMm,
            double pathMm) {}

    /** What a person would outline. */
    public record Structures(List<Nerve> nerves, List<Hazard> hazards) {
        public Structures {
            nerves = List.copyOf(nerves);
            hazards = List.copyOf(hazards);
        }
    }

    static SampleTruth of(SampleScene scene, Optional<NeedlePose> needle, double movedMm) {
        return new TruthTeller(scene, movedMm).tell(needle);
    }
}
