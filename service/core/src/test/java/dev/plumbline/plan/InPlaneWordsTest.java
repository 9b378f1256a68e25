// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.CaseFixture;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.SkinBeyondProbe;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** The whole sentence for each thing a person has to know. */
class InPlaneWordsTest {
    private static final String FLAT =
            " The skin beyond the probe is taken as flat: on a round limb the real skin lies lower, aim flatter.";
    private static final String NO_HAZARDS = " Hazards were not marked: nothing was checked.";

    private final CaseFixture fixture = new CaseFixture();

    private String text() {
        return Plan.of(fixture.input()).text();
    }

    private Shape disc(double u, double w, double radius) {
        return new Shape.Disc(fixture.at(u, w), radius);
    }

    private void hazard(String name, double margin, Shape shape) {
        fixture.hazards.add(new Hazard(name, Hazard.Kind.ARTERY, OptionalDouble.of(margin), shape));
    }

    @Test
    void withoutALengthTheShortestNeedleIsNamed() {
        fixture.intent(new Intent.EntryDistance(45));
        assertThat(text())
                .endsWith("54 mm of needle to the target: with 10 mm in reserve a needle of at least 65 mm." + FLAT
                        + NO_HAZARDS);
    }

    @Test
    void aNeedleThatIsTooShortSaysByHowMuch() {
        fixture.intent(new Intent.EntryDistance(45));
        fixture.needleLength = OptionalDouble.of(50);
        assertThat(text())
                .startsWith(
                        "This path does not fit the limits you set: the needle does not reach with its reserve. Enter 26"
                                + " mm beyond the probe's edge (45 mm from its middle)")
                .contains("a 50 mm needle is too short by 4 mm.");
    }

    @Test
    void anEntryUnderTheProbeIsInsideItsEdge() {
        fixture.intent(new Intent.EntryDistance(15));
        assertThat(text())
                .contains("Enter 4 mm inside the probe's edge (15 mm from its middle)")
                .contains("It should show from the skin on; if it does not, stop and find it.");
    }

    @Test
    void withoutAFootprintTheEntryIsFromTheMiddle() {
        fixture.footprint = OptionalDouble.empty();
        fixture.intent(new Intent.EntryDistance(45));
        assertThat(text())
                .startsWith(
                        "Enter 45 mm from the probe's middle, about 35\u00b0 (3 along, 2 down). Where it should appear is"
                                + " not known: that needs the probe's kind, its footprint and its midpoint on the frame.");
    }

    @Test
    void withoutAMidpointTheEntryIsFromOverTheTarget() {
        fixture.midpoint = false;
        fixture.intent(new Intent.AngleToSkin(45));
        assertThat(text()).startsWith("Enter 30 mm along the skin from the point over the target, about 45\u00b0");
    }

    @Test
    void aPathBesideTheFaceIsNotShown() {
        fixture.targetU = 25;
        fixture.intent(new Intent.AngleToSkin(45));
        assertThat(text()).contains(" No part of this path comes under the face: the beam will not show it.");
    }

    @Test
    void anglesOutsideTheBandSayWhatFollows() {
        fixture.intent(new Intent.AngleToSkin(20));
        assertThat(text()).contains(" Shallower than the band: seen better, longer way through tissue.");
        fixture.intent(new Intent.AngleToSkin(55));
        assertThat(text()).contains(" Steeper than the band: heel in about 10\u00b0, then mark again.");
        fixture.intent(new Intent.AngleToSkin(70));
        assertThat(text()).contains(" Steeper than the band by more than heel-in makes up for.");
        fixture.intent(new Intent.AngleToSkin(40));
        assertThat(text()).doesNotContain("than the band");
    }

    @Test
    void aRoundLimbIsNotTakenAsFlat() {
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(60));
        fixture.intent(new Intent.EntryDistance(30));
        assertThat(text()).doesNotContain("taken as flat").endsWith(NO_HAZARDS);
    }

    @Test
    void withoutSkinThereIsOneThingToDo() {
        fixture.skin = false;
        fixture.kind = Optional.empty();
        assertThat(text()).isEqualTo("Mark the skin under the probe: without it no depth and no angle can be given.");
        fixture.approach = Approach.OUT_OF_PLANE;
        assertThat(text()).isEqualTo("Mark the skin under the probe: without it no depth and no angle can be given.");
    }

    @Test
    void structuresAreNamedWithTheirDistance() {
        fixture.intent(new Intent.EntryDistance(40));
        // 10 mm perpendicular to the 3-4-5 path, of radius 3 and 2.
        hazard("artery", 0, disc(20 + 0.6 * 10, 15 + 0.8 * 10, 3));
        fixture.nerves.add(new Nerve("median", disc(20 - 0.6 * 10, 15 - 0.8 * 10, 2)));
        assertThat(text())
                .endsWith(
                        " Hazard \"artery\": 7 mm at the nearest, the overshoot counted in. Nerve \"median\": 8 mm at the"
                                + " nearest. Hazards were checked only inside this frame.");
    }

    /** The overshoot ends 2 mm into the artery, the path itself stays 2 mm above it. */
    @Test
    void aStatedPathIsToldThatItsTargetLimitsTheMargin() {
        hazard("artery", 4, disc(0, 34, 2));
        fixture.intent(new Intent.EntryDistance(40));
        assertThat(text())
                .startsWith(
                        "This path does not fit the limits you set: the path comes too near to the hazard \"artery\". The"
                                + " target lies nearer to the hazard \"artery\" than the margin you set, so that with 5 mm of"
                                + " overshoot only a path along its side fits: move the target, or set the overshoot to 0 if the tip"
                                + " is sure to stop there. Enter 21 mm beyond");
    }

    @Test
    void aHazardFarFromTheTargetSaysNothingOfIt() {
        hazard("artery", 4, disc(20, 15, 3));
        fixture.intent(new Intent.EntryDistance(40));
        assertThat(text())
                .contains("too near to the hazard \"artery\". Enter 21 mm")
                .contains("\"artery\": crossed, the overshoot counted in.");
    }

    /** Neither 24 mm beside the middle nor at the probe's edge does the needle reach. */
    @Test
    void anImpossiblePlanSaysWhatWouldChangeThat() {
        fixture.needleLength = OptionalDouble.of(45);
        assertThat(text())
                .isEqualTo(
                        "No entry fits the limits you set, for what you marked: the probe stands where the needle would"
                                + " enter; the needle does not reach with its reserve. What would change that: A needle of at least"
                                + " 53 mm, entry 30 mm from the probe's middle, about 45\u00b0. Out-of-plane, puncture 15 mm from the"
                                + " beam, about 65\u00b0.");
    }

    @Test
    void theWaysOutOfAStatedPathSayWhereToEnter() {
        fixture.intent(new Intent.EntryDistance(20));
        Plan plan = Plan.of(fixture.input());
        assertThat(plan.waysOut())
                .extracting(WayOut::text)
                .containsExactly(
                        "Shallower, entry 24 mm from the probe's middle, about 50\u00b0.",
                        "Lift the probe's edge for the puncture, entry 20 mm from the probe's middle, about 55\u00b0, then put"
                                + " it back.",
                        "From the probe's other end, entry 52 mm from the probe's middle, about 30\u00b0.",
                        "Out-of-plane, puncture 30 mm from the beam, about 45\u00b0.");
    }

    @Test
    void aSteeperEntrySaysHowFarToHeelIn() {
        fixture.targetW = 40;
        fixture.intent(new Intent.EntryDistance(60));
        fixture.needleLength = OptionalDouble.of(60);
        assertThat(Plan.of(fixture.input()).waysOut())
                .filteredOn(way -> way.kind() == WayOut.Kind.STEEPER_WITH_HEEL_IN)
                .extracting(WayOut::text)
                // The needle reaches 50 mm: entry 30, 53.1 degrees, 8.1 above the band.
                .containsExactly(
                        "Steeper, entry 30 mm from the probe's middle, about 55\u00b0, heeling in about 8\u00b0, then"
                                + " mark again.");
    }
}
