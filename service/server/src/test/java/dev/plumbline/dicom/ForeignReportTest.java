// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.dicom.ItemValue.Coordinates;
import dev.plumbline.dicom.ItemValue.GraphicType;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.intake.ForeignMark;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** Reports of other software that say of a mark less, or in another place, than ours do. */
class ForeignReportTest {
    private static final ItemValue.Image IMAGE =
            new ItemValue.Image(new ItemValue.Instance("1.2.840.10008.5.1.4.1.1.6.1", "2.25.31", OptionalInt.empty()));
    private static final Coordinates POINT = new Coordinates(GraphicType.POINT, List.of(new PointPx(10, 20)));

    private static ContentItem image(Relation relation) {
        return new ContentItem(relation, Optional.empty(), IMAGE, List.of());
    }

    private static ForeignMark read(ContentItem coordinates, ContentItem... beside) {
        ContentItem number = ContentItem.of(
                        Relation.CONTAINS,
                        Concepts.DEPTH,
                        new ItemValue.Numeric(Optional.of(DecimalText.measured(3, Codes.ucum("mm"))), Optional.empty()))
                .with(
                        ContentItem.code(
                                Relation.HAS_CONCEPT_MOD, Concepts.EQUIVALENT_MEANING, Codes.own("Q-TARGETDEPTH")),
                        coordinates);
        List<ContentItem> children = new ArrayList<>(List.of(beside));
        children.add(number);
        DataSet report = new DataSet().put(Tag.SOP_INSTANCE_UID, "2.25.51");
        ContentWriter.write(
                ContentItem.container(Concepts.IMAGING_MEASUREMENT_REPORT).with(children), report);
        return ForeignReport.read(report).marks().get(0);
    }

    private static ContentItem coordinates(ContentItem... under) {
        return new ContentItem(Relation.INFERRED_FROM, Optional.of(Concepts.TARGET), POINT, List.of(under));
    }

    @Test
    void aMarkWithoutAnImageIsOnTheOnlyOneAndSaysSo() {
        ForeignMark mark = read(coordinates(), image(Relation.CONTAINS));
        assertThat(mark.image()).isEqualTo("2.25.31");
        assertThat(mark.onOnlyImage()).isTrue();
        assertThat(read(coordinates(image(Relation.SELECTED_FROM))).onOnlyImage())
                .isFalse();
    }

    /** SR 7: own concept, then the number's concept and 121050, then what stands farther away. */
    @Test
    void theExactMeaningOfANumberIsALabel() {
        assertThat(read(coordinates(image(Relation.SELECTED_FROM))).labels())
                .extracting(label -> label.code().orElseThrow().value())
                .startsWith(Concepts.TARGET.value(), Concepts.DEPTH.value(), "Q-TARGETDEPTH");
    }
}
