// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Check;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.geometry.SpeedOfSound;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.Optional;
import java.util.OptionalDouble;

/** Refuses input that no plan can be made from, each with the field to mend. */
public final class PlanCheck {
    private static final String SKIN = "/probe/skinBeyondProbe";
    /** Share of the frame's width; nominal lengths and scales are not exact (design choice). */
    private static final double LONGEST_FACE = 1.1;

    private static final String SPEED = "/probe/speedOfSoundMPerS";

    private PlanCheck() {}

    /**
     * Checks everything that can be checked before computing.
     *
     * @throws Refusal at the first thing that is wrong
     */
    public static void check(PlanInput input) {
        probe(input.probe());
        speedOfSound(input.probe());
        skin(input);
        Check.positive("/needle/lengthMm", input.needle().lengthMm());
        constraints(input.constraints());
        uncertainty(input.uncertainty());
        marks(input);
        input.intent().ifPresent(intent -> intent(intent, input));
    }

    private static void probe(Probe probe) {
        Check.positive("/probe/footprintMm", probe.footprintMm());
        Check.positive("/probe/beamThicknessMm", probe.beamThicknessMm());
        Check.positive("/probe/housingLengthMm", probe.housingLengthMm());
        Check.positive("/probe/housingHalfThicknessMm", probe.housingHalfThicknessMm());
        Check.positive("/probe/arcRadiusMm", probe.arcRadiusMm());
        if (probe.arcRadiusMm().isPresent()
                && probe.footprintMm().isPresent()
                && probe.arcRadiusMm().getAsDouble() <= probe.footprintMm().getAsDouble() / 2) {
            throw new Refusal(new Problem.InvalidValue(
                    "/probe/arcRadiusMm",
                    "The arc is narrower than the chord between the face's ends.",
                    "Give the radius of the face; /probe/footprintMm is the chord."));
        }
        if (probe.footprintMm().isPresent()
                && probe.housingLengthMm().isPresent()
                && probe.housingLengthMm().getAsDouble() < probe.footprintMm().getAsDouble()) {
            throw new Refusal(new Problem.InvalidValue(
                    "/probe/housingLengthMm",
                    "The housing is shorter than the face.",
                    "Give the outer length of the probe along the image plane."));
        }
    }

    private static void speedOfSound(Probe probe) {
        if (probe.speedOfSoundMPerS().isEmpty()) {
            return;
        }
        Check.within(SPEED, probe.speedOfSoundMPerS(), SpeedOfSound.SLOWEST_M_PER_S, SpeedOfSound.FASTEST_M_PER_S);
        if (!probe.kind().equals(Optional.of(Probe.Kind.LINEAR))) {
            throw new Refusal(new Problem.InvalidValue(
                    SPEED,
                    "Another speed of sound can be undone on an unsteered linear array only, where it changes depths"
                            + " alone.",
                    "Leave it out, or state the kind linear in /probe/kind if the probe is one."));
        }
    }

    private static void skin(PlanInput input) {
        Probe probe = input.probe();
        SkinBeyondProbe stated = probe.skinBeyondProbe().orElse(new SkinBeyondProbe.Flat());
        if (stated instanceof SkinBeyondProbe.Flat) {
            return;
        }
        if (input.approach() == Approach.OUT_OF_PLANE) {
            throw new Refusal(new Problem.InvalidValue(
                    SKIN, "Out-of-plane the skin along the image plane does not matter.", "Leave it out."));
        }
        if (probe.midpoint().isEmpty()) {
            throw new Refusal(new Problem.MissingField(
                    "/probe/midpoint",
                    "Mark the midpoint of the transducer face; the skin's shape is stated from it."));
        }
        double edge = probe.footprintMm().orElse(0) / 2;
        if (stated instanceof SkinBeyondProbe.Round round) {
            Check.positive(SKIN + "/radiusMm", OptionalDouble.of(round.radiusMm()));
            if (round.radiusMm() <= edge) {
                throw new Refusal(new Problem.InvalidValue(
                        SKIN + "/radiusMm", "The limb is thinner than the face is long.", "Give the limb's radius."));
            }
        } else if (stated instanceof SkinBeyondProbe.Drop drop) {
            if (probe.footprintMm().isEmpty()) {
                throw new Refusal(new Problem.MissingField(
                        "/probe/footprintMm", "State the footprint; the skin drops from the end of the face."));
            }
            Check.within(SKIN + "/dropMm", drop.dropMm(), 0, Double.MAX_VALUE);
            if (!(drop.atMm() > edge && drop.atMm() < Double.MAX_VALUE)) {
                throw new Refusal(new Problem.InvalidValue(
                        SKIN + "/atMm",
                        "The drop is not stated beyond the end of the face.",
                        "Give the distance from the probe's midpoint, above half the footprint."));
            }
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
        StructureCheck.check(input.marks(), frame);
        footprint(input);
    }

    /** A face longer than the picture is wide is most often a wrong unit, and the picture cannot show what it claims to. */
    private static void footprint(PlanInput input) {
        double widthMm = input.frame().columns()
                * PlannedFrame.calibration(input).pixel().mmPerColumn();
        if (input.probe().footprintMm().orElse(0) > LONGEST_FACE * widthMm) {
            throw new Refusal(new Problem.InvalidValue(
                    "/probe/footprintMm",
                    "The face is longer than the whole frame is wide, " + Words.mm(widthMm) + ".",
                    "Give the length of the face in millimetres. If the frame shows part of the face only, send one that"
                            + " shows all of it."));
        }
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
