// SPDX-License-Identifier: Apache-2.0
package dev.plumbline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Reason;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.Unit;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.observation.Phase;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Constraints;
import dev.plumbline.plan.Limit;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanQuantity;
import dev.plumbline.plan.TargetKind;
import dev.plumbline.plan.WayOut;
import java.util.Arrays;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/** The names that clients read: fields, reasons, kinds. A change here breaks every client. */
class ContractWordsTest {
    private static <E> String words(E[] values, Function<E, String> word) {
        return String.join(" ", Arrays.stream(values).map(word).toList());
    }

    @Test
    void quantities() {
        assertThat(words(PlanQuantity.values(), PlanQuantity::field))
                .isEqualTo("angleToSkinDeg angleToLocalSkinDeg entryDistanceMm entryFromProbeEdgeMm"
                        + " entryFromTargetColumnMm punctureDistanceMm punctureFromProbeEdgeMm alongProbeMm targetDepthMm"
                        + " pathMm leadInMm firstSeenDepthMm shortestNeedleMm needleLeftMm beamIncidenceDeg"
                        + " specularReturnShare sidewaysToleranceMm rotationToleranceDeg shaftToPlaneDeg heelInDeg"
                        + " leastClearanceMm");
        assertThat(words(ObservationQuantity.values(), ObservationQuantity::field))
                .isEqualTo(
                        "angleToSkinDeg entryDistanceMm entryExtrapolatedMm deepestSeenDepthMm seenLengthMm tipDepthMm"
                                + " crossingDepthMm punctureDistanceMm pathMm tipToTargetMm bowMm rotationBoundDeg");
        assertThat(words(DeviationQuantity.values(), DeviationQuantity::field))
                .isEqualTo(
                        "angleToSkinDeg entryDistanceMm tipDepthMm pathMm alongPlanMm acrossPlanMm punctureDistanceMm"
                                + " crossingDepthMm");
    }

    @Test
    void theUnitIsInTheName() {
        for (Measurand[] all :
                new Measurand[][] {PlanQuantity.values(), ObservationQuantity.values(), DeviationQuantity.values()}) {
            for (Measurand measurand : all) {
                String ending = measurand.unit() == Unit.DEGREE ? "Deg" : measurand.unit() == Unit.ONE ? "Share" : "Mm";
                assertThat(measurand.field()).endsWith(ending);
            }
        }
        assertThat(words(Unit.values(), Unit::ucum)).isEqualTo("deg mm 1");
    }

    @Test
    void reasonsAssumptionsAndDoubts() {
        assertThat(words(Reason.values(), Reason::word))
                .isEqualTo("notMarked midpointNotMarked targetNotMarked skinNotMarked tipNotConfirmed tipOutOfPlane"
                        + " shaftNotVisible frameNotCalibrated shaftParallelToSkin infeasible otherSide probeMoved"
                        + " noShaftUnderFace verticalPath notInThisPlane notLoggedLive");
        assertThat(words(Assumption.values(), Assumption::word))
                .isEqualTo("needleLiesInImagePlane needleIsStraight skinFlatBeyondProbe probeNotMoved targetDidNotMove"
                        + " beamPerpendicularToSkin seenEndMayBeShaft pixelsAreSquare speedOfSoundStated");
        assertThat(words(Doubt.values(), Doubt::word))
                .isEqualTo("shortShaft skinAssumed midpointOffSkin tipOffShaft scaleStated scaleContradicted");
    }

    @Test
    void kinds() {
        assertThat(words(Limit.Kind.values(), Limit.Kind::word))
                .isEqualTo("footprint reach leadIn nerve hazard housing punctureDistance");
        assertThat(words(WayOut.Kind.values(), WayOut.Kind::word))
                .isEqualTo("longerNeedle steeperWithHeelIn shallower fromProbesOtherEnd steeper outOfPlane"
                        + " entryAtProbeEdge");
        assertThat(words(Plan.Source.values(), Plan.Source::word)).isEqualTo("stated proposed");
        assertThat(words(Approach.values(), Approach::word)).isEqualTo("inPlane outOfPlane");
        assertThat(words(TargetKind.values(), TargetKind::word))
                .isEqualTo("nearNerve fascialPlane perivascular catheterSpace");
        assertThat(words(Constraints.Preference.values(), Constraints.Preference::word))
                .isEqualTo("visibility shortPath");
        assertThat(words(Phase.values(), Phase::word))
                .isEqualTo("finalTip duringInjection afterSpread catheter practice");
        assertThat(words(Probe.Kind.values(), Probe.Kind::word)).isEqualTo("linear curved");
        assertThat(words(Side.values(), Side::word)).isEqualTo("left right");
        assertThat(words(Calibration.Source.values(), Calibration.Source::word))
                .isEqualTo("ultrasoundRegions pixelSpacing stated");
    }
}
