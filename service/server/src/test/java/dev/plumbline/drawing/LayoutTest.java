// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.Shape;
import dev.plumbline.plan.Nerve;
import dev.plumbline.plan.PlanInput;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LayoutTest {
    /** Lines of one label touch; a hair is allowed for rounding. */
    private static final double HAIR = 1e-6;

    record Case(String name, Scene scene, boolean overFrame) {
        @Override
        public String toString() {
            return name + (overFrame ? " over a frame" : " alone");
        }
    }

    static Stream<Case> cases() {
        Map<String, Scene> scenes = Gallery.scenes();
        scenes.put("crowded", crowded(24));
        return scenes.entrySet().stream()
                .flatMap(entry ->
                        Stream.of(true, false).map(overFrame -> new Case(entry.getKey(), entry.getValue(), overFrame)));
    }

    /** More nerves than there is room for names. */
    private static Scene crowded(int count) {
        DrawnCase frame = DrawnCase.SQUARE;
        PlanInput input = frame.input(19, DrawnCase.entry(29));
        List<Nerve> nerves = IntStream.range(0, count)
                .mapToObj(i -> new Nerve(
                        "branch number " + i + " of many",
                        new Shape.Disc(frame.at(-15 + 6 * (i % 6), 6 + 5 * (i / 6)), 1.5)))
                .toList();
        return PlanDrawing.of(DrawnCase.with(input, nerves, List.of()), DrawnCase.planned(input));
    }

    private static Box box(Element.Text text) {
        double size = text.type().size();
        return new Box(
                text.at().x(),
                text.at().y() - Lettering.ASCENT * size,
                text.at().x() + text.width(),
                text.at().y() + Lettering.DESCENT * size);
    }

    private static List<Element.Text> texts(Sheet sheet) {
        return Stream.concat(sheet.onStage().stream(), sheet.beside().stream())
                .filter(Element.Text.class::isInstance)
                .map(Element.Text.class::cast)
                .toList();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void keepsEveryTextOnTheCanvasAndLabelsOnTheStage(Case made) {
        Sheet sheet = Layout.of(made.scene(), made.overFrame());
        assertThat(texts(sheet))
                .isNotEmpty()
                .allSatisfy(text -> assertThat(sheet.canvas().holds(box(text)))
                        .as(text.text())
                        .isTrue());
        assertThat(sheet.onStage())
                .filteredOn(Element.Text.class::isInstance)
                .allSatisfy(text -> assertThat(sheet.stage().holds(box((Element.Text) text)))
                        .as(text.toString())
                        .isTrue());
    }

    @ParameterizedTest
    @MethodSource("cases")
    void letsNoTextCoverAnother(Case made) {
        List<Element.Text> texts = texts(Layout.of(made.scene(), made.overFrame()));
        for (int i = 0; i < texts.size(); i++) {
            for (int j = i + 1; j < texts.size(); j++) {
                assertThat(box(texts.get(i)).grown(-HAIR).overlaps(box(texts.get(j))))
                        .as("%s / %s", texts.get(i).text(), texts.get(j).text())
                        .isFalse();
            }
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void keepsTextOffTargetTipAndEveryOtherMarkedPoint(Case made) {
        Grid grid = Grid.of(made.scene(), made.overFrame());
        Sheet sheet = Layout.of(made.scene(), made.overFrame());
        List<Xy> points = new ArrayList<>();
        for (Item item : made.scene().items()) {
            if (item instanceof Item.Spot spot) {
                points.add(grid.xy(spot.at()));
            }
        }
        assertThat(points).isNotEmpty();
        for (Element element : sheet.onStage()) {
            if (element instanceof Element.Text text) {
                assertThat(points).noneMatch(point -> box(text).holds(point));
            }
        }
    }

    @Test
    void namesBesideThePictureWhatFoundNoRoomOnIt() {
        Scene scene = crowded(60);
        Sheet sheet = Layout.of(scene, true);
        String all =
                String.join(" ", texts(sheet).stream().map(Element.Text::text).toList());
        assertThat(all).contains("Marked too, without room for a label:");
        IntStream.range(0, 60).forEach(i -> assertThat(all).contains("number " + i + " of"));
    }

    @Test
    void scalesTextAndLinesWithTheFrame() {
        Scene small = Gallery.scene("plan");
        DrawnCase twice = DrawnCase.linear(1280, 1280, new PixelSize(0.0296875, 0.0296875), 80, 38);
        PlanInput input = twice.input(19, DrawnCase.entry(29));
        Scene large = PlanDrawing.of(input, DrawnCase.planned(input));
        Box one = Layout.of(small, true).canvas();
        Box two = Layout.of(large, true).canvas();
        assertThat(two.width() / one.width()).isBetween(1.99, 2.01);
        assertThat(two.height() / one.height()).isBetween(1.99, 2.01);
    }

    @Test
    void explainsEveryLineStyleThatIsDrawn() {
        Gallery.scenes().forEach((name, scene) -> {
            Sheet sheet = Layout.of(scene, true);
            String all = String.join(
                    " ", texts(sheet).stream().map(Element.Text::text).toList());
            for (Item item : scene.items()) {
                if (item instanceof Item.Run run && run.role() != Role.DIFFERENCE) {
                    assertThat(all).as(name).contains(run.role().legend());
                }
            }
        });
    }
}
