// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Nerve;
import dev.plumbline.plan.PlanInput;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

class SvgDrawingTest {
    /** Coordinates are written with three decimals. */
    private static final double WRITTEN = 0.0006;

    private static final DrawnCase SQUARE = DrawnCase.SQUARE;
    private static final DrawnCase FLAT = DrawnCase.linear(800, 400, new PixelSize(0.05, 0.1), 20, 38);

    private static SvgReader alone(Scene scene) {
        return SvgReader.of(SvgDrawing.text(scene, Optional.empty()));
    }

    private static SvgReader over(Scene scene) {
        return SvgReader.of(SvgDrawing.text(scene, Optional.of(Background.plain(scene.columns(), scene.rows()))));
    }

    private static void near(Xy drawn, PointPx expected) {
        assertThat(drawn.x()).isCloseTo(expected.column(), within(WRITTEN));
        assertThat(drawn.y()).isCloseTo(expected.row(), within(WRITTEN));
    }

    private static Scene plan(PlanInput input) {
        return PlanDrawing.of(input, DrawnCase.planned(input));
    }

    @Test
    void drawsThePathFromEntryOverFirstSeenToTargetInFramePixels() {
        PlanInput input = SQUARE.input(19, DrawnCase.entry(29));
        Comparison made = DrawnCase.planned(input);
        InPlanePlan.Line line = ((InPlanePlan) made.plan()).line().orElseThrow();
        SvgReader svg = over(PlanDrawing.of(input, made));
        near(SvgReader.start(svg.one("plan-lead-in")), line.entry());
        near(SvgReader.end(svg.one("plan-lead-in")), line.firstSeen().orElseThrow());
        near(SvgReader.start(svg.one("plan-path")), line.firstSeen().orElseThrow());
        near(SvgReader.end(svg.one("plan-path")), input.marks().target());
        // by plain trigonometry, not by the engine
        near(SvgReader.start(svg.one("plan-lead-in")), SQUARE.at(29, 0));
        near(SvgReader.start(svg.one("plan-path")), SQUARE.at(19, 10 * 19 / 29.0));
    }

    @Test
    void drawsAloneWithMillimetresEquallyLongBothWays() {
        PlanInput input = FLAT.input(19, DrawnCase.entry(29));
        SvgReader svg = alone(plan(input));
        Xy entry = SvgReader.start(svg.one("plan-lead-in"));
        Xy target = SvgReader.end(svg.one("plan-path"));
        double drawn = Math.toDegrees(Math.atan2(target.y() - entry.y(), entry.x() - target.x()));
        assertThat(drawn).isCloseTo(Math.toDegrees(Math.atan2(19, 29)), within(0.001));
        Element bar = svg.one("scale-bar");
        double perMm = (SvgReader.end(bar).x() - SvgReader.start(bar).x()) / 10;
        assertThat(entry.distanceTo(target)).isCloseTo(perMm * Math.hypot(19, 29), within(0.01));
    }

    @Test
    void keepsFramePixelsOverAFrameWhosePixelsAreNotSquare() {
        PlanInput input = FLAT.input(19, DrawnCase.entry(29));
        SvgReader svg = over(plan(input));
        near(SvgReader.start(svg.one("plan-lead-in")), FLAT.at(29, 0));
        near(SvgReader.end(svg.one("plan-path")), FLAT.at(0, 19));
        assertThat(svg.text()).contains("Pixels are not square");
    }

    @Test
    void drawsADiscAsRoundInThePatient() {
        PlanInput input = DrawnCase.with(FLAT.input(19, DrawnCase.entry(29)), List.of(), FLAT.hazards());
        Scene scene = PlanDrawing.of(input, DrawnCase.planned(FLAT.input(19, DrawnCase.entry(29))));
        Element artery = over(scene).ofClass("hazard").stream()
                .filter(shape -> shape.getTagName().equals("ellipse"))
                .findFirst()
                .orElseThrow();
        assertThat(SvgReader.number(artery, "rx")).isCloseTo(3 / 0.05, within(WRITTEN));
        assertThat(SvgReader.number(artery, "ry")).isCloseTo(3 / 0.1, within(WRITTEN));
        Element margin = over(scene).ofClass("hazard-margin").stream()
                .filter(shape -> shape.getTagName().equals("ellipse"))
                .findFirst()
                .orElseThrow();
        assertThat(SvgReader.number(margin, "rx")).isCloseTo(5 / 0.05, within(WRITTEN));
    }

    @Test
    void keepsTheMarginOfAnOutlineItsDistanceAway() {
        PlanInput bare = SQUARE.input(19, DrawnCase.entry(29));
        Hazard square = new Hazard(
                "box",
                Hazard.Kind.OTHER,
                OptionalDouble.of(2),
                new Shape.Outline(
                        List.of(SQUARE.at(-10, 25), SQUARE.at(-4, 25), SQUARE.at(-4, 30), SQUARE.at(-10, 30))));
        Scene scene = PlanDrawing.of(DrawnCase.with(bare, List.of(), List.of(square)), DrawnCase.planned(bare));
        List<Xy> margin = SvgReader.points(over(scene).one("hazard-margin"));
        PointPx topLeft = SQUARE.at(-12, 23);
        PointPx bottomRight = SQUARE.at(-2, 32);
        assertThat(margin.stream().mapToDouble(Xy::x).min().orElseThrow()).isCloseTo(topLeft.column(), within(0.1));
        assertThat(margin.stream().mapToDouble(Xy::y).min().orElseThrow()).isCloseTo(topLeft.row(), within(0.1));
        assertThat(margin.stream().mapToDouble(Xy::x).max().orElseThrow()).isCloseTo(bottomRight.column(), within(0.1));
        assertThat(margin.stream().mapToDouble(Xy::y).max().orElseThrow()).isCloseTo(bottomRight.row(), within(0.1));
    }

    @Test
    void drawsTheObservedShaftAsTwoRailsAboutTheMarkedLine() {
        PlanInput input = SQUARE.input(19, DrawnCase.entry(29));
        ObservationInput seen = SQUARE.observed(26, SQUARE.at(1.2, 20.4), true);
        Comparison made = Comparison.of(input, List.of(seen));
        SvgReader svg = over(PlanDrawing.ofObservation(seen, input, made, 0));
        List<Element> rails = svg.ofClass("observed-shaft");
        assertThat(rails).hasSize(2);
        Xy first = SvgReader.start(rails.get(0)).towards(SvgReader.start(rails.get(1)), 0.5);
        Xy last = SvgReader.end(rails.get(0)).towards(SvgReader.end(rails.get(1)), 0.5);
        near(first, seen.marks().shaft().get(0));
        near(last, seen.marks().shaft().get(1));
        near(SvgReader.start(svg.one("observed-line")), SQUARE.at(26, 0));
        near(SvgReader.end(svg.one("observed-line")), seen.marks().shaft().get(0));
        assertThat(svg.text()).contains("Observed 39.4\u00b0", "steeper than the plan", "tip, 20.4 mm deep");
    }

    @Test
    void carriesThePlanOverToAnotherFrame() {
        PlanInput input = SQUARE.input(19, DrawnCase.entry(29));
        ObservationInput same = SQUARE.observed(26, SQUARE.at(1.2, 20.4), true);
        ObservationInput other = new ObservationInput(same.marks(), same.frame(), false);
        Comparison made = Comparison.of(input, List.of(other));
        SvgReader svg = over(PlanDrawing.ofObservation(other, input, made, 0));
        near(SvgReader.start(svg.one("plan-lead-in")), SQUARE.at(29, 0));
        near(SvgReader.start(svg.one("plan-path")), SQUARE.at(19, 10 * 19 / 29.0));
        near(SvgReader.end(svg.one("plan-path")), SQUARE.at(0, 19));
    }

    @Test
    void saysOfAnUnconfirmedEndThatItMayBeShaft() {
        PlanInput input = SQUARE.input(19, DrawnCase.entry(29));
        ObservationInput seen = SQUARE.observed(26, SQUARE.at(1.2, 20.4), false);
        Comparison made = Comparison.of(input, List.of(seen));
        SvgReader svg = over(PlanDrawing.ofObservation(seen, input, made, 0));
        assertThat(svg.ofClass("tip")).isEmpty();
        assertThat(svg.ofClass("seen-end")).isNotEmpty();
        assertThat(svg.text()).contains("deepest seen, may be shaft");
    }

    @Test
    void drawsAProposedPathBrokenAndSaysThatNobodyConfirmedIt() {
        SvgReader svg = over(plan(SQUARE.input(19, Optional.empty())));
        assertThat(svg.ofClass("plan-path")).isEmpty();
        assertThat(svg.one("proposed-path").getAttribute("stroke-dasharray")).isNotEmpty();
        assertThat(svg.text()).contains("proposed, not confirmed", "Proposed, not confirmed");
    }

    @Test
    void lowersTheSkinOfARoundLimbAndPutsTheEntryOnIt() {
        SkinBeyondProbe limb = new SkinBeyondProbe.Round(60);
        SvgReader svg = over(plan(DrawnCase.withSkin(SQUARE.input(19, DrawnCase.entry(29)), limb)));
        near(SvgReader.start(svg.one("plan-lead-in")), SQUARE.at(29, 60 - Math.sqrt(60 * 60 - 29 * 29)));
        List<Xy> skin = svg.ofClass("skin-beyond").stream()
                .map(SvgReader::points)
                .max(Comparator.comparingDouble(
                        points -> points.get(points.size() - 1).x()))
                .orElseThrow();
        // The limb touches the face in its middle; from there its skin runs on without a step at the face's end.
        near(skin.get(0), SQUARE.at(0, 0));
        PointPx center = SQUARE.at(0, 60);
        double radius = center.row() - skin.get(0).y();
        for (Xy point : skin) {
            assertThat(Math.hypot(point.x() - center.column(), point.y() - center.row()))
                    .isCloseTo(radius, within(0.01));
        }
        assertThat(svg.text()).contains("Plan 21.7\u00b0");
    }

    @Test
    void drawsTheFaceOfACurvedArrayAsItsArc() {
        DrawnCase frame = DrawnCase.linear(700, 600, new PixelSize(0.14, 0.14), 60, 58);
        SvgReader svg = over(plan(DrawnCase.curved(frame.input(45, DrawnCase.entry(60)), 60)));
        List<Xy> face = SvgReader.points(svg.one("probe"));
        // between the two turned-up ends
        near(face.get(1), frame.at(-29, Math.sqrt(60 * 60 - 29 * 29) - 60));
        near(face.get(face.size() / 2), frame.at(0, 0));
    }

    @Test
    void namesTheLimitsThatForbidAStatedPath() {
        SvgReader svg = over(Gallery.scene("infeasible"));
        assertThat(svg.text()).contains("outside the limits:", "Outside the limits: reach, hazard artery");
    }

    @Test
    void drawsThePunctureTriangleOfAnOutOfPlanePlanTrueToScale() {
        SvgReader svg = over(Gallery.scene("out-of-plane"));
        Element path = svg.one("side-view-plan");
        Xy puncture = SvgReader.start(path);
        Xy crossing = SvgReader.end(path);
        assertThat(puncture.x() - crossing.x()).isCloseTo(crossing.y() - puncture.y(), within(2 * WRITTEN));
        assertThat(svg.text()).contains("20.0 mm from the beam", "45.0\u00b0");
        assertThat(svg.ofClass("plan-path")).isEmpty();
    }

    @Test
    void saysDraftUntilSigned() {
        Scene draft = plan(SQUARE.input(19, DrawnCase.entry(29)));
        assertThat(over(draft).text()).contains("DRAFT, not signed");
        assertThat(over(draft.signed()).text()).doesNotContain("DRAFT").contains("Part of a signed record");
    }

    @Test
    void cutsAPathThatRunsBeyondThePictureAndSaysSo() {
        DrawnCase narrow = DrawnCase.linear(300, 700, new PixelSize(0.085, 0.085), 30, 25);
        SvgReader svg = over(plan(narrow.input(38, DrawnCase.entry(160))));
        near(SvgReader.start(svg.one("plan-lead-in")), narrow.at(160, 0));
        assertThat(svg.ofClass("runs-on")).hasSize(2);
        assertThat(svg.text()).contains("(beyond this picture)");
    }

    @Test
    void namesTheScaleTheUncertaintyAndTheCaution() {
        assertThat(over(plan(SQUARE.input(19, DrawnCase.entry(29)))).text())
                .contains(
                        "Scale: ultrasound region 0, 0.0594 mm per pixel.",
                        "expanded uncertainty (k = 2)",
                        "Only what was marked was checked.",
                        "mm from the probe's edge",
                        "Plan 33.2\u00b0",
                        "10.0 mm");
    }

    @Test
    void embedsTheFrameUnchangedAndNothingFromOutside() throws IOException {
        Scene scene = plan(SQUARE.input(19, DrawnCase.entry(29)));
        BufferedImage frame = Background.speckle(scene.columns(), scene.rows(), 90);
        SvgReader svg = SvgReader.of(SvgDrawing.text(scene, Optional.of(frame)));
        Element image = svg.one("frame");
        String prefix = "data:image/png;base64,";
        assertThat(image.getAttribute("href")).startsWith(prefix);
        BufferedImage read = ImageIO.read(new ByteArrayInputStream(
                Base64.getDecoder().decode(image.getAttribute("href").substring(prefix.length()))));
        for (int row = 0; row < scene.rows(); row += 7) {
            for (int column = 0; column < scene.columns(); column += 7) {
                assertThat(read.getRGB(column, row) & 0xFFFFFF).isEqualTo(frame.getRGB(column, row) & 0xFFFFFF);
            }
        }
        assertThat(SvgReader.number(image, "width")).isEqualTo(640);
        assertThat(svg.all("*").stream().filter(element -> element.hasAttribute("href")))
                .containsExactly(image);
        assertThat(svg.all("script")).isEmpty();
        assertThat(svg.all("style")).isEmpty();
    }

    @Test
    void writesNamesAsTextWhateverTheyContain() {
        PlanInput bare = SQUARE.input(19, DrawnCase.entry(29));
        List<Nerve> nerves = List.of(new Nerve(
                "</text><script>alert(\"x\")</script> & co \u0000\ud800 and much more",
                new Shape.Disc(SQUARE.at(-8, 12), 2)));
        Scene scene = PlanDrawing.of(DrawnCase.with(bare, nerves, List.of()), DrawnCase.planned(bare));
        SvgReader svg = over(scene);
        assertThat(svg.all("script")).isEmpty();
        assertThat(svg.one("nerve-label").getTextContent()).startsWith("</text><script>alert(\"x\")");
    }

    @Test
    void shortensLongNames() {
        PlanInput bare = SQUARE.input(19, DrawnCase.entry(29));
        List<Nerve> nerves = List.of(new Nerve("n".repeat(300), new Shape.Disc(SQUARE.at(-8, 12), 2)));
        Scene scene = PlanDrawing.of(DrawnCase.with(bare, nerves, List.of()), DrawnCase.planned(bare));
        assertThat(over(scene).one("nerve-label").getTextContent()).hasSize(28 + " (nerve)".length());
    }

    @Test
    void givesTheSameBytesForTheSameScene() {
        assertThat(Gallery.scenes()).isEqualTo(Gallery.scenes());
        for (Scene each : Gallery.scenes().values()) {
            assertThat(SvgDrawing.text(each, Optional.empty())).isEqualTo(SvgDrawing.text(each, Optional.empty()));
        }
        Scene scene = Gallery.scene("observed");
        Optional<BufferedImage> frame = Optional.of(Background.speckle(640, 640, 60));
        assertThat(SvgDrawing.text(Gallery.scene("observed"), frame)).isEqualTo(SvgDrawing.text(scene, frame));
    }

    @Test
    void refusesAPictureOfAnotherSize() {
        Scene scene = plan(SQUARE.input(19, DrawnCase.entry(29)));
        Optional<BufferedImage> other = Optional.of(Background.plain(64, 64));
        assertThatThrownBy(() -> SvgDrawing.text(scene, other)).isInstanceOf(IllegalArgumentException.class);
    }
}
