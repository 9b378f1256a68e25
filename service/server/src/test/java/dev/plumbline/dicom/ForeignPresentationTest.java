// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.intake.ForeignMark;
import dev.plumbline.problem.Refusal;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Presentation states of other software that are drawn otherwise than ours. */
class ForeignPresentationTest {
    private static final String IMAGE = "2.25.31";

    private static DataSet image() {
        return new DataSet().put(Tag.REFERENCED_SOP_INSTANCE_UID, IMAGE);
    }

    private static DataSet state(DataSet... annotations) {
        return new DataSet()
                .put(Tag.SOP_INSTANCE_UID, "2.25.41")
                .put(
                        Tag.DISPLAYED_AREA_SELECTION_SEQUENCE,
                        List.of(new DataSet()
                                .put(Tag.DISPLAYED_AREA_TOP_LEFT_HAND_CORNER, 101, 51)
                                .put(Tag.DISPLAYED_AREA_BOTTOM_RIGHT_HAND_CORNER, 500, 450)))
                .put(Tag.GRAPHIC_ANNOTATION_SEQUENCE, List.of(annotations));
    }

    private static DataSet annotation() {
        return new DataSet().put(Tag.REFERENCED_IMAGE_SEQUENCE, List.of(image()));
    }

    private static DataSet point(String units, float column, float row) {
        return new DataSet()
                .put(Tag.GRAPHIC_ANNOTATION_UNITS, units)
                .put(Tag.GRAPHIC_TYPE, "POINT")
                .put(Tag.GRAPHIC_DATA, column, row);
    }

    private static DataSet text(String words, String units, float column, float row) {
        return new DataSet()
                .put(Tag.UNFORMATTED_TEXT_VALUE, words)
                .put(Tag.ANCHOR_POINT_ANNOTATION_UNITS, units)
                .put(Tag.ANCHOR_POINT, column, row);
    }

    private static List<String> labels(ForeignMark mark) {
        return mark.labels().stream().map(ForeignMark.Label::text).toList();
    }

    /** SR 4: column = TL - 1 + fx * (BR - TL + 1). */
    @Test
    void fractionsOfTheDisplayedAreaAreTakenToTheImage() {
        DataSet drawn = annotation()
                .put(Tag.GRAPHIC_OBJECT_SEQUENCE, List.of(point("DISPLAY", 0.25f, 0.5f)))
                .put(Tag.TEXT_OBJECT_SEQUENCE, List.of(text("target", "DISPLAY", 0.25f, 0.5f)));
        ForeignMark mark = ForeignPresentation.read(state(drawn)).marks().get(0);
        assertThat(mark.points()).containsExactly(new PointPx(200, 250));
        assertThat(labels(mark)).containsExactly("target");
    }

    @Test
    void fractionsOfATurnedAreaAreRefused() {
        DataSet drawn = annotation().put(Tag.GRAPHIC_OBJECT_SEQUENCE, List.of(point("DISPLAY", 0.25f, 0.5f)));
        DataSet state = state(drawn).put(Tag.IMAGE_ROTATION, 90);
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> ForeignPresentation.read(state));
        assertThat(refusal.problem().detail()).contains("annotation 1, graphic 1", "not turned");
    }

    /** SR 7: the text of the same annotation, else the nearest anchor within 20 px. */
    @Test
    void aTextInAnAnnotationOfItsOwnNamesTheNearestGraphic() {
        DataSet drawn = annotation()
                .put(Tag.GRAPHIC_OBJECT_SEQUENCE, List.of(point("PIXEL", 100, 100), point("PIXEL", 300, 300)));
        DataSet words = annotation()
                .put(Tag.TEXT_OBJECT_SEQUENCE, List.of(text("tip", "PIXEL", 110, 105), text("far", "PIXEL", 300, 330)));
        DataSet pair = annotation()
                .put(Tag.GRAPHIC_OBJECT_SEQUENCE, List.of(point("PIXEL", 500, 500)))
                .put(Tag.TEXT_OBJECT_SEQUENCE, List.of(text("another's", "PIXEL", 301, 301)));
        List<ForeignMark> marks =
                ForeignPresentation.read(state(drawn, words, pair)).marks();
        assertThat(labels(marks.get(0))).containsExactly("tip");
        assertThat(labels(marks.get(1))).isEmpty();
        assertThat(labels(marks.get(2))).containsExactly("another's");
    }
}
