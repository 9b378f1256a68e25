// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.UltrasoundRegion;
import java.util.List;
import org.junit.jupiter.api.Test;

class SampleTruthTest {
    private final SampleSet set = new SampleSet(7);

    @Test
    void theInPlaneStoryIsTheWorkedExample() {
        SampleTruth plan = first(set.inPlanePlan());
        SampleTruth needle = first(set.inPlaneNeedle());
        SampleTruth.NeedleLengths lengths = needle.needle().orElseThrow().lengths();

        assertThat(plan.probe().footprintMm()).isEqualTo(38);
        assertThat(plan.target().depthMm()).isEqualTo(30);
        assertThat(plan.target().acrossMm()).isZero();
        assertThat(plan.target().at().column())
                .isEqualTo(plan.probe().midpoint().column());
        assertThat(lengths.angleToSkinDeg()).isEqualTo(38.2);
        assertThat(lengths.entryDistanceMm().getAsDouble())
                .isCloseTo(0.6 + 30.9 / Math.tan(Math.toRadians(38.2)), within(1e-9));
        assertThat(lengths.pathMm()).isCloseTo(30.9 / Math.sin(Math.toRadians(38.2)), within(1e-9));
    }

    @Test
    void pixelsAndMillimetresOfTheNeedleAgreeOnEveryLinearFrame() {
        for (Sample sample : set.all()) {
            SampleTruth truth = first(sample);
            truth.needle().filter(needle -> needle.entry().isPresent()).ifPresent(needle -> {
                PointPx entry = needle.entry().orElseThrow();
                double across =
                        (entry.column() - needle.end().column()) * truth.pixel().mmPerColumn();
                double down = (needle.end().row() - entry.row()) * truth.pixel().mmPerRow();
                assertThat(Math.toDegrees(Math.atan2(down, Math.abs(across))))
                        .as(sample.name())
                        .isCloseTo(needle.lengths().angleToSkinDeg(), within(1e-9));
                assertThat(Math.hypot(across, down)).isCloseTo(needle.lengths().pathMm(), within(1e-9));
            });
        }
    }

    /** The region's physical axes start at the middle of the face. */
    @Test
    void theReferencePixelPutsTheMidpointAtZero() {
        for (Sample sample : set.all()) {
            SampleTruth truth = first(sample);
            for (UltrasoundRegion region :
                    truth.scale().regions().stream().limit(1).toList()) {
                PointPx midpoint = truth.probe().midpoint();
                double x = (midpoint.column()
                                        - 0.5
                                        - region.bounds().minColumn()
                                        - region.referenceColumn().getAsInt())
                                * region.deltaX()
                        + region.referenceX().getAsDouble();
                double y = (midpoint.row()
                                        - 0.5
                                        - region.bounds().minRow()
                                        - region.referenceRow().getAsInt())
                                * region.deltaY()
                        + region.referenceY().getAsDouble();
                assertThat(x).as(sample.name()).isCloseTo(0, within(1e-9));
                assertThat(y).as(sample.name()).isCloseTo(0, within(1e-9));
            }
        }
    }

    @Test
    void targetAndVisibleShaftLieInTheFirstRegionAndOutlinesOnTheScreen() {
        for (Sample sample : set.all()) {
            SampleTruth truth = first(sample);
            truth.scale().regions().stream().limit(1).forEach(region -> {
                assertThat(region.bounds().contains(truth.target().at()))
                        .as(sample.name())
                        .isTrue();
                truth.needle()
                        .ifPresent(needle -> assertThat(needle.visible())
                                .as(sample.name())
                                .allMatch(point -> region.bounds().contains(point)));
            });
            assertThat(truth.structures().nerves().size()
                            + truth.structures().hazards().size())
                    .as(sample.name())
                    .isPositive();
        }
    }

    @Test
    void nothingOfTheNeedleIsToldWhereNothingCanBeSeen() {
        assertThat(first(set.named("needle-not-seen")).needle()).isEmpty();
        assertThat(first(set.named("near-part-of-shaft")).needle().orElseThrow().tipVisible())
                .isFalse();
        assertThat(first(set.named("far-part-of-shaft")).needle().orElseThrow().tipVisible())
                .isTrue();
    }

    @Test
    void theTargetIsOutsideEveryNerveSoThatTheTipStopsBesideIt() {
        for (Sample sample : set.all()) {
            SamplePane pane = sample.scene().panes().get(0);
            for (Anatomy.Outlined outlined : pane.anatomy().outlines()) {
                if (outlined.hazard().isEmpty()) {
                    assertThat(holds(outlined.outline(), pane.anatomy().target()))
                            .as(sample.name())
                            .isFalse();
                }
            }
        }
    }

    @Test
    void namesAreFileNamesAndAllDiffer() {
        List<String> names = set.all().stream().map(Sample::name).toList();

        assertThat(names).doesNotHaveDuplicates().allMatch(name -> name.matches("[a-z]+(-[a-z]+)*"));
    }

    /** Even-odd rule. */
    private static boolean holds(List<ScanPoint> outline, ScanPoint place) {
        boolean inside = false;
        for (int i = 0; i < outline.size(); i++) {
            ScanPoint a = outline.get(i);
            ScanPoint b = outline.get((i + 1) % outline.size());
            boolean crosses = a.depthMm() > place.depthMm() != b.depthMm() > place.depthMm();
            double at = a.acrossMm()
                    + (place.depthMm() - a.depthMm()) / (b.depthMm() - a.depthMm()) * (b.acrossMm() - a.acrossMm());
            if (crosses && place.acrossMm() < at) {
                inside = !inside;
            }
        }
        return inside;
    }

    private static SampleTruth first(Sample sample) {
        return sample.scene().truths().get(0);
    }
}
