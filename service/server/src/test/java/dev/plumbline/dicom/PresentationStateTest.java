// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.dicom.ItemValue.Coordinates;
import dev.plumbline.geometry.PointPx;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PresentationStateTest {
    private final List<ComposedObject> objects = RecordFixtures.IN_PLANE.compose();
    private final DataSet grey = DataSets.of(objects, "pr/1");
    private final DataSet colour = DataSets.of(objects, "pr/2");

    @Test
    void thePhotometricInterpretationOfTheFrameDecidesBetweenGreyAndColour() {
        assertThat(grey.string(Tag.SOP_CLASS_UID)).contains("1.2.840.10008.5.1.4.1.1.11.1");
        assertThat(colour.string(Tag.SOP_CLASS_UID)).contains("1.2.840.10008.5.1.4.1.1.11.2");
        for (String photometric : List.of("RGB", "YBR_FULL", "YBR_FULL_422", "YBR_ICT", "PALETTE COLOR")) {
            assertThat(PresentationState.isGrey(new DataSet().put(Tag.PHOTOMETRIC_INTERPRETATION, photometric)))
                    .isFalse();
        }
        assertThat(PresentationState.isGrey(new DataSet().put(Tag.PHOTOMETRIC_INTERPRETATION, "MONOCHROME1")))
                .isTrue();
    }

    @Test
    void carriesTheFirstWindowOfTheFrame() {
        DataSet window = grey.items(Tag.SOFTCOPY_VOI_LUT_SEQUENCE).get(0);
        assertThat(window.strings(Tag.WINDOW_CENTER)).containsExactly("120");
        assertThat(window.strings(Tag.WINDOW_WIDTH)).containsExactly("200");
        assertThat(grey.string(Tag.PRESENTATION_LUT_SHAPE)).contains("IDENTITY");
    }

    @Test
    void aColourStateHasAnInputProfileOfEvenLength() {
        byte[] profile = colour.bytes(Tag.ICC_PROFILE);
        assertThat(profile.length).isEven();
        assertThat(ColourProfile.deviceClass(profile)).isEqualTo("scnr");
        assertThat(colour.holds(Tag.PRESENTATION_LUT_SHAPE)).isFalse();
    }

    @Test
    void displaysTheWholeImageCountedFromOne() {
        DataSet area = grey.items(Tag.DISPLAYED_AREA_SELECTION_SEQUENCE).get(0);
        assertThat(area.numbers(Tag.DISPLAYED_AREA_TOP_LEFT_HAND_CORNER)).containsExactly(1, 1);
        assertThat(area.numbers(Tag.DISPLAYED_AREA_BOTTOM_RIGHT_HAND_CORNER)).containsExactly(640, 640);
        assertThat(area.strings(Tag.PRESENTATION_PIXEL_ASPECT_RATIO)).containsExactly("1", "1");
    }

    @Test
    void observedStandsAbovePlan() {
        List<DataSet> layers = colour.items(Tag.GRAPHIC_LAYER_SEQUENCE);
        assertThat(layers)
                .extracting(layer -> layer.string(Tag.GRAPHIC_LAYER).orElseThrow())
                .containsExactly("PLAN", "OBSERVED");
        assertThat(layers)
                .extracting(layer -> layer.integer(Tag.GRAPHIC_LAYER_ORDER).orElseThrow())
                .containsExactly(1, 2);
    }

    @Test
    void namesTheFrameWhereTheObjectHasSeveral() {
        for (int tag : new int[] {Tag.DISPLAYED_AREA_SELECTION_SEQUENCE, Tag.GRAPHIC_ANNOTATION_SEQUENCE}) {
            assertThat(colour.items(tag)
                            .get(0)
                            .items(Tag.REFERENCED_IMAGE_SEQUENCE)
                            .get(0)
                            .strings(Tag.REFERENCED_FRAME_NUMBER))
                    .containsExactly("7");
        }
        assertThat(colour.items(Tag.REFERENCED_SERIES_SEQUENCE)
                        .get(0)
                        .items(Tag.REFERENCED_IMAGE_SEQUENCE)
                        .get(0)
                        .strings(Tag.REFERENCED_FRAME_NUMBER))
                .containsExactly("7");
    }

    /** Every line of the report that a viewer draws is in a presentation state: same points, same tracking UID. */
    @ParameterizedTest
    @EnumSource
    void drawsWhatTheReportDraws(RecordFixtures fixture) {
        List<ComposedObject> composed = fixture.compose();
        List<String> drawn = new ArrayList<>();
        for (ComposedObject object : composed) {
            if (object.part().startsWith("pr/")) {
                DataSets.of(object.bytes()).items(Tag.GRAPHIC_ANNOTATION_SEQUENCE).stream()
                        .flatMap(annotation -> annotation.items(Tag.GRAPHIC_OBJECT_SEQUENCE).stream())
                        .map(PresentationStateTest::graphic)
                        .forEach(drawn::add);
            }
        }
        List<String> reported = RecordReader.groups(ContentReader.read(fixture.report())).stream()
                .flatMap(group -> group.item().children().stream()
                        .filter(number -> number.children().size() == 1
                                && number.children().get(0).value() instanceof Coordinates)
                        .map(number -> trackingUid(group) + " "
                                + numbers(
                                        ((Coordinates) number.children().get(0).value()).points())))
                .toList();
        assertThat(drawn).isNotEmpty().containsExactlyInAnyOrderElementsOf(reported);
    }

    private static String trackingUid(ReadGroup group) {
        return ((ItemValue.Uid)
                        group.item().first(Concepts.TRACKING_UID).orElseThrow().value())
                .uid();
    }

    private static String graphic(DataSet object) {
        double[] data = object.numbers(Tag.GRAPHIC_DATA);
        List<PointPx> points = new ArrayList<>();
        for (int i = 0; i < data.length; i += 2) {
            points.add(new PointPx(data[i], data[i + 1]));
        }
        return object.string(Tag.TRACKING_UID).orElseThrow() + " " + numbers(points);
    }

    private static String numbers(List<PointPx> points) {
        return points.stream()
                .map(at -> (float) at.column() + "," + (float) at.row())
                .collect(Collectors.joining(" "));
    }

    @Test
    void saysTheWordsOfTheReportAtAnAnchorOnTheImage() {
        Set<String> words = colour.items(Tag.GRAPHIC_ANNOTATION_SEQUENCE).stream()
                .flatMap(annotation -> annotation.items(Tag.TEXT_OBJECT_SEQUENCE).stream())
                .map(text -> text.string(Tag.UNFORMATTED_TEXT_VALUE).orElseThrow())
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(words).containsExactly("Observed 33.1°\r\n27.4° flatter", "Plan 60.5°");
    }

    /** White has no colour; the plan's blue lies on the blue side, the observed orange on the yellow one. */
    @Test
    void layerColoursAreThoseOfTheDrawings() {
        int[] plan = GraphicLayer.PLAN.cieLab();
        int[] observed = GraphicLayer.OBSERVED.cieLab();
        assertThat(plan[2]).isLessThan(0x8080);
        assertThat(observed[2]).isGreaterThan(0x8080);
        assertThat(plan[0]).isBetween(0xB000, 0xD000);
    }

    private static List<String> found(DataSet state) {
        return ObjectCheck.check(state).report().lines().stream()
                .map(CheckReport.Line::text)
                .toList();
    }

    @ParameterizedTest
    @EnumSource
    void theCheckFindsNothingInOurOwn(RecordFixtures fixture) {
        for (ComposedObject object : fixture.compose()) {
            assertThat(ObjectCheck.check(DataSets.of(object.bytes())).report().lines())
                    .as(object.part())
                    .isEmpty();
        }
    }

    @Test
    void theCheckFindsALayerThatIsNotDefined() {
        grey.items(Tag.GRAPHIC_ANNOTATION_SEQUENCE).get(0).put(Tag.GRAPHIC_LAYER, "ELSEWHERE");
        assertThat(found(grey)).containsExactly("stands on the layer \"ELSEWHERE\", which is not defined");
    }

    @Test
    void theCheckFindsAPointOutsideTheImage() {
        grey.items(Tag.GRAPHIC_ANNOTATION_SEQUENCE)
                .get(0)
                .items(Tag.GRAPHIC_OBJECT_SEQUENCE)
                .get(0)
                .put(Tag.GRAPHIC_DATA, 640.5f, 3f);
        assertThat(found(grey)).containsExactly("has a point outside the image");
        grey.items(Tag.GRAPHIC_ANNOTATION_SEQUENCE)
                .get(0)
                .items(Tag.TEXT_OBJECT_SEQUENCE)
                .get(0)
                .put(Tag.ANCHOR_POINT, -1f, 3f);
        assertThat(found(grey)).hasSize(2);
    }

    @Test
    void theCheckFindsADisplayedAreaThatCountsFromZero() {
        grey.items(Tag.DISPLAYED_AREA_SELECTION_SEQUENCE).get(0).put(Tag.DISPLAYED_AREA_TOP_LEFT_HAND_CORNER, 0, 0);
        assertThat(found(grey)).singleElement().asString().contains("begins before 1\\1");
    }

    @Test
    void theCheckFindsTheProfileOfADisplay() {
        byte[] profile = colour.bytes(Tag.ICC_PROFILE);
        System.arraycopy(new byte[] {'m', 'n', 't', 'r'}, 0, profile, 12, 4);
        colour.put(Tag.ICC_PROFILE, profile);
        assertThat(found(colour)).singleElement().asString().contains("class \"mntr\"");
        colour.remove(Tag.ICC_PROFILE);
        assertThat(found(colour)).containsExactly("is missing");
    }

    @Test
    void theCheckFindsAFrameThatIsNotNamed() {
        colour.items(Tag.REFERENCED_SERIES_SEQUENCE)
                .get(0)
                .items(Tag.REFERENCED_IMAGE_SEQUENCE)
                .get(0)
                .remove(Tag.REFERENCED_FRAME_NUMBER);
        assertThat(found(colour)).containsExactly("names an object with frames and no frame of it");
    }

    @Test
    void theCheckFindsCoordinatesThatAreNotAsManyAsStated() {
        grey.items(Tag.GRAPHIC_ANNOTATION_SEQUENCE)
                .get(0)
                .items(Tag.GRAPHIC_OBJECT_SEQUENCE)
                .get(0)
                .put(Tag.NUMBER_OF_GRAPHIC_POINTS, 9);
        assertThat(found(grey)).singleElement().asString().startsWith("states 18 coordinates");
    }
}
