// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.dicom.ItemValue.Coordinates;
import dev.plumbline.dicom.ItemValue.GraphicType;
import dev.plumbline.dicom.ItemValue.Image;
import dev.plumbline.dicom.ItemValue.Measured;
import dev.plumbline.dicom.ItemValue.Numeric;
import dev.plumbline.geometry.PointPx;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The layout that an open web viewer was seen to load, checked without a browser: it reads numbers with exactly one child,
 * needs one for every tracking UID, and shows comments, then those numbers, at most five lines.
 */
class ViewerLayoutTest {
    private static final int MOST_LINES = 5;
    /** Of two lines on a frame of 640 rows that fills a screen of about 900. Source: design choice. */
    private static final double LABEL_HEIGHT_PX = 40;

    private static List<ContentItem> groups(DataSet report) {
        return ContentReader.read(report)
                .first(Concepts.IMAGING_MEASUREMENTS)
                .orElseThrow()
                .children();
    }

    private static Stream<ContentItem> thin(ContentItem group) {
        return group.children().stream()
                .filter(child ->
                        child.value() instanceof Numeric && child.children().size() == 1);
    }

    private static List<String> comments(ContentItem group) {
        return group.named(Concepts.COMMENT)
                .map(item -> ((ItemValue.Text) item.value()).text())
                .toList();
    }

    private static ContentItem labelled(RecordFixtures fixture, String label) {
        return groups(fixture.report()).stream()
                .filter(group ->
                        group.textOf(Concepts.TRACKING_IDENTIFIER).orElse("").equals(label))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @EnumSource
    void everyGroupHasSomethingToDrawWithAValue(RecordFixtures fixture) {
        for (ContentItem group : groups(fixture.report())) {
            assertThat(thin(group)).isNotEmpty().allSatisfy(number -> {
                assertThat(((Numeric) number.value()).measured()).isPresent();
                ContentItem coordinates = number.children().get(0);
                assertThat(coordinates.value()).isInstanceOf(Coordinates.class);
                assertThat(coordinates.relation()).isEqualTo(Relation.INFERRED_FROM);
                assertThat(coordinates.children()).hasSize(1);
                assertThat(coordinates.children().get(0).value()).isInstanceOf(Image.class);
            });
        }
    }

    @ParameterizedTest
    @EnumSource
    void everyItemDirectlyInAGroupIsNamedAndNoneIsSpatial(RecordFixtures fixture) {
        for (ContentItem group : groups(fixture.report())) {
            assertThat(group.children()).allSatisfy(child -> {
                assertThat(child.name()).isPresent();
                assertThat(child.value()).isNotInstanceOfAny(Coordinates.class, Image.class);
            });
        }
    }

    @ParameterizedTest
    @EnumSource
    void aGroupIsOnOneFrameOnly(RecordFixtures fixture) {
        for (ContentItem group : groups(fixture.report())) {
            assertThat(group.walk()
                            .filter(item -> item.value() instanceof Image)
                            .map(ContentItem::value)
                            .distinct())
                    .hasSize(1);
        }
    }

    @ParameterizedTest
    @EnumSource
    void trackingUidsAreUniqueAndTrackingIdentifiersNeutral(RecordFixtures fixture) {
        List<ContentItem> groups = groups(fixture.report());
        assertThat(groups.stream()
                        .map(group ->
                                group.first(Concepts.TRACKING_UID).orElseThrow().value()))
                .doesNotHaveDuplicates();
        assertThat(groups)
                .noneMatch(group ->
                        group.textOf(Concepts.TRACKING_IDENTIFIER).orElse("").startsWith("Cornerstone"));
    }

    @ParameterizedTest
    @EnumSource
    void everyThinNumberRepeatsARichOneOfItsGroupOrOfThePlan(RecordFixtures fixture) {
        List<ContentItem> groups = groups(fixture.report());
        List<Measured> planned = rich(groups.get(0));
        for (ContentItem group : groups) {
            boolean carried = group.codeOf(Concepts.FINDING)
                    .filter(Concepts.CARRIED_PLAN::means)
                    .isPresent();
            assertThat(carried ? planned : rich(group))
                    .containsAll(thin(group)
                            .map(number -> ((Numeric) number.value()).measured().orElseThrow())
                            .toList());
        }
    }

    private static List<Measured> rich(ContentItem group) {
        return new ReadGroup(group)
                .richNumbers()
                .flatMap(number -> ((Numeric) number.value()).measured().stream())
                .toList();
    }

    @ParameterizedTest
    @EnumSource
    void labelsAreShortAndNoMoreThanAViewerShows(RecordFixtures fixture) {
        for (ContentItem group : groups(fixture.report())) {
            assertThat(comments(group)).hasSizeBetween(1, 2).allMatch(text -> text.length() <= 16);
            assertThat(comments(group).size() + thin(group).count()).isLessThanOrEqualTo(MOST_LINES);
        }
    }

    /** Where a viewer was seen to set a label: beside the right one of the first two points drawn, at their mean row. */
    private static PointPx label(ContentItem group) {
        List<PointPx> points = ((Coordinates)
                        thin(group).findFirst().orElseThrow().children().get(0).value())
                .points();
        PointPx first = points.get(0);
        PointPx second = points.get(Math.min(1, points.size() - 1));
        return new PointPx(Math.max(first.column(), second.column()), (first.row() + second.row()) / 2);
    }

    /** The plan carried to one frame twice says the same in the same place. */
    private static List<PointPx> labelsOfPaths(DataSet report, ItemValue frame) {
        return groups(report).stream()
                .filter(group -> List.of(Concepts.PLAN, Concepts.OBSERVATION, Concepts.CARRIED_PLAN).stream()
                        .anyMatch(new ReadGroup(group)::is))
                .filter(group -> group.walk().anyMatch(item -> item.value().equals(frame)))
                .collect(Collectors.toMap(
                        group -> comments(group) + " " + label(group), ViewerLayoutTest::label, (one, same) -> one))
                .values()
                .stream()
                .toList();
    }

    /** Out-of-plane there are only points, and plan and needle are meant to have theirs in the same place. */
    @ParameterizedTest
    @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "OUT_OF_PLANE")
    void theLabelsOfPlanAndNeedleAreApart(RecordFixtures fixture) {
        DataSet report = fixture.report();
        List<ItemValue> frames = ContentReader.read(report)
                .walk()
                .map(ContentItem::value)
                .filter(Image.class::isInstance)
                .distinct()
                .toList();
        for (ItemValue frame : frames) {
            List<PointPx> labels = labelsOfPaths(report, frame);
            for (int i = 0; i < labels.size(); i++) {
                for (int j = 0; j < i; j++) {
                    assertThat(labels.get(i).distanceTo(labels.get(j)))
                            .as("%s", labels)
                            .isGreaterThan(LABEL_HEIGHT_PX);
                }
            }
        }
    }

    @Test
    void onThePlansOwnFrameANeedleIsItsLineAndOnAnotherItsTipFirst() {
        assertThat(thin(labelled(RecordFixtures.ONE_FRAME_FOR_BOTH, "Observation 1")))
                .extracting(number -> ((Coordinates) number.children().get(0).value()).type())
                .containsExactly(GraphicType.POLYLINE);
        assertThat(thin(labelled(RecordFixtures.IN_PLANE, "Observation 1")))
                .extracting(number -> ((Coordinates) number.children().get(0).value()).type())
                .containsExactly(GraphicType.POINT, GraphicType.POLYLINE);
    }

    @Test
    void thePlanShowsItsPointBeforeItsLineSoThatLabelsStayApart() {
        List<ContentItem> thin = thin(labelled(RecordFixtures.IN_PLANE, "Plan")).toList();
        assertThat(thin)
                .extracting(number -> ((Coordinates) number.children().get(0).value()).type())
                .containsExactly(GraphicType.POINT, GraphicType.POLYLINE);
        assertThat(thin)
                .extracting(number -> number.name().orElseThrow().meaning())
                .containsExactly("Depth", "Path length");
        assertThat(comments(labelled(RecordFixtures.IN_PLANE, "Plan"))).containsExactly("Plan 60.5°");
    }

    @Test
    void anObservationShowsItsAngleAndHowItDiffers() {
        assertThat(comments(labelled(RecordFixtures.IN_PLANE, "Observation 1")))
                .containsExactly("Observed 33.1°", "27.4° flatter");
    }

    /** Nobody is to take the length of a cut line for the needle's. */
    @Test
    void aPathCutAtTheBorderIsAMereDistance() {
        ContentItem plan = labelled(RecordFixtures.CUT_PATH_MIDLINE_UTC, "Plan");
        ContentItem line = thin(plan).skip(1).findFirst().orElseThrow();
        assertThat(line.name()).contains(Concepts.DISTANCE);
        double shown = ((Numeric) line.value()).measured().orElseThrow().value();
        double whole = ((Numeric) new ReadGroup(plan)
                        .number(Quantity.of("Q-PATH"))
                        .orElseThrow()
                        .value())
                .measured()
                .orElseThrow()
                .value();
        assertThat(shown).isLessThan(whole).isGreaterThan(whole / 2);
    }

    @Test
    void aShaftWithoutConfirmedTipIsAMereDistanceFromItsSkinEnd() {
        ContentItem line = thin(labelled(RecordFixtures.TIP_NOT_CONFIRMED, "Observation 1"))
                .findFirst()
                .orElseThrow();
        assertThat(line.name()).contains(Concepts.DISTANCE);
        Coordinates drawn = (Coordinates) line.children().get(0).value();
        assertThat(drawn.points().get(0).row()).isLessThan(drawn.points().get(1).row());
    }

    @Test
    void anObservationWithNothingToDrawStandsElsewhere() {
        List<String> drawn = groups(RecordFixtures.NEEDLE_NOT_SEEN.report()).stream()
                .map(group -> group.textOf(Concepts.TRACKING_IDENTIFIER).orElseThrow())
                .toList();
        assertThat(drawn).contains("Observation 2").doesNotContain("Observation 1");
        assertThat(comments(labelled(RecordFixtures.NEEDLE_NOT_SEEN, "Observation 2")))
                .containsExactly("Needle not seen");
    }
}
