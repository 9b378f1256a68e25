// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Check;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.Optional;
import java.util.OptionalDouble;

/** Refuses input that no plan can be made from, each with the field to mend. */
public final class PlanCheck {
    private PlanCheck() {}

    /**
     * Checks everything that can be checked before computing.
     *
     * @throws Refusal at the first thing that is wrong
     */
    public static void check(PlanInput input) {
        notYetComputed(input);
        probe(input.probe());
        Check.positive("/needle/lengthMm", input.needle().lengthMm());
        constraints(input.constraints());
        uncertainty(input.uncertainty());
        marks(input);
        input.intent().ifPresent(intent -> intent(intent, input));
    }

    /** @throws Refusal when no needle can reach the target from the skin */
    static void targetBelowSkin(double depthMm) {
        if (depthMm <= Intervals.TOLERANCE_MM) {
            throw new Refusal(new Problem.TargetUnreachable(
                    "/marks/target",
                    "The target lies on or above the skin line.",
                    "Mark the target in the tissue, or mark the skin where it is; for a frame shown probe-down set"
                            + " /probe/imageInverted."));
        }
    }

    private static void notYetComputed(PlanInput input) {
        if (!input.marks().hazards().isEmpty()) {
            throw new Refusal(new Problem.NotYetComputed("/marks/hazards", "A hazard"));
        }
        if (!input.marks().nerves().isEmpty()) {
            throw new Refusal(new Problem.NotYetComputed("/marks/nerves", "A nerve's outline"));
        }
        if (input.probe().kind().equals(Optional.of(Probe.Kind.CURVED))) {
            throw new Refusal(new Problem.NotYetComputed("/probe/kind", "A curved array"));
        }
        if (input.probe()
                .skinBeyondProbe()
                .filter(skin -> !(skin instanceof SkinBeyondProbe.Flat))
                .isPresent()) {
            throw new Refusal(new Problem.NotYetComputed("/probe/skinBeyondProbe", "Skin that is not flat"));
        }
    }

    private static void probe(Probe probe) {
        Check.positive("/probe/footprintMm", probe.footprintMm());
        Check.positive("/probe/beamThicknessMm", probe.beamThicknessMm());
        Check.positive("/probe/housingLengthMm", probe.housingLengthMm());
        Check.positive("/probe/housingHalfThicknessMm", probe.housingHalfThicknessMm());
        if (probe.footprintMm().isPresent()
                && probe.housingLengthMm().isPresent()
                && probe.housingLengthMm().getAsDouble() < probe.footprintMm().getAsDouble()) {
            throw new Refusal(new Problem.InvalidValue(
                    "/probe/housingLengthMm",
                    "The housing is shorter than the face.",
                    "Give the outer length of the probe along the image plane."));
        }
    }

    private static void constraints(Constraints constraints) {
        constraints.angleBand().ifPresent(PlanCheck::band);
        Check.notNegative("/constraints/footprintClearanceMm", constraints.footprintClearanceMm());
        Check.notNegative("/constraints/reserveMm", constraints.reserveMm());
        Check.notNegative("/constraints/cautionWithinMm", constraints.cautionWithinMm());
        Check.notNegative("/constraints/overshootMm", constraints.overshootMm());
        Check.positive("/constraints/leadInMaxMm", constraints.leadInMaxMm());
        Check.within("/constraints/heelInMaxDeg", constraints.heelInMaxDeg(), 0, 90);
        Check.angle("/constraints/outOfPlaneAngleDeg", constraints.outOfPlaneAngleDeg());
        Check.positive("/constraints/maxPunctureDistanceMm", constraints.maxPunctureDistanceMm());
        Check.positive("/constraints/steepPunctureDistanceMm", constraints.steepPunctureDistanceMm());
    }

    private static void band(Constraints.Band band) {
        // Negated so that a number that is none is refused too.
        if (!(0 < band.lowDeg() && band.lowDeg() <= band.highDeg() && band.highDeg() < 90)) {
            throw new Refusal(new Problem.InvalidValue(
                    "/constraints/angleBandDeg",
                    "The band is not two angles with 0 < low <= high < 90.",
                    "Give the lower angle first, such as [30, 45]."));
        }
    }

    private static void uncertainty(InputUncertainty uncertainty) {
        Check.positive("/uncertainty/markPx", uncertainty.markPx());
        Check.within("/uncertainty/scaleRelative", uncertainty.scaleRelative(), 0, 1);
        uncertainty.scannerTolerance().ifPresent(tolerance -> {
            Check.within("/uncertainty/scannerTolerance/mm", tolerance.mm(), 0, Double.MAX_VALUE);
            Check.within("/uncertainty/scannerTolerance/percent", tolerance.percent(), 0, 100);
        });
    }

    private static void marks(PlanInput input) {
        FrameGeometry frame = input.frame();
        Check.onFrame("/marks/target", input.marks().target(), frame);
        input.probe().midpoint().ifPresent(midpoint -> Check.onFrame("/probe/midpoint", midpoint, frame));
        Check.line("/marks/skin", input.marks().skin(), frame);
    }

    private static void intent(Intent intent, PlanInput input) {
        boolean across = intent instanceof Intent.PunctureDistance;
        String pointer = pointer(intent);
        if (across != (input.approach() == Approach.OUT_OF_PLANE)) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    "This intent does not belong to the approach "
                            + input.approach().word() + ".",
                    across
                            ? "In-plane: state entryDistanceMm, angleToSkinDeg or entry."
                            : "Out-of-plane: state punctureDistanceMm."));
        }
        if (intent instanceof Intent.EntryDistance distance) {
            Check.within(pointer, distance.mm(), -Double.MAX_VALUE, Double.MAX_VALUE);
        } else if (intent instanceof Intent.AngleToSkin angle) {
            if (!(angle.degrees() > 0 && angle.degrees() <= 90)) {
                throw new Refusal(new Problem.InvalidValue(
                        pointer, "The angle is not above 0 and up to 90 degrees.", "Give the angle to the skin line."));
            }
        } else if (intent instanceof Intent.EntryMark mark) {
            Check.onFrame(pointer, mark.at(), input.frame());
        } else if (intent instanceof Intent.PunctureDistance distance) {
            Check.positive(pointer, OptionalDouble.of(distance.mm()));
        }
    }

    private static String pointer(Intent intent) {
        if (intent instanceof Intent.EntryDistance) {
            return "/intent/entryDistanceMm";
        }
        if (intent instanceof Intent.AngleToSkin) {
            return "/intent/angleToSkinDeg";
        }
        return intent instanceof Intent.EntryMark ? "/intent/entry" : "/intent/punctureDistanceMm";
    }
}
