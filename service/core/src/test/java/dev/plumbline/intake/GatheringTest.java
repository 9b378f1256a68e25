// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.intake.ForeignMark.Coded;
import dev.plumbline.intake.ForeignMark.Form;
import dev.plumbline.intake.ForeignMark.Kind;
import dev.plumbline.intake.ForeignMark.Label;
import dev.plumbline.intake.ForeignMark.Stated;
import dev.plumbline.intake.Gathered.Placed;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Hazard;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class GatheringTest {
    private static final MarkRules RULES = new MarkRules(
            List.of(
                    rule(MarkMeaning.TARGET, "target"),
                    rule(MarkMeaning.SHAFT, "shaft"),
                    rule(MarkMeaning.TIP, "tip"),
                    rule(MarkMeaning.SKIN, "skin"),
                    new MarkRules.Rule(
                            MarkMeaning.HAZARD,
                            Optional.of(new LabelPattern("artery.*")),
                            Optional.empty(),
                            Hazard.Kind.ARTERY),
                    new MarkRules.Rule(
                            MarkMeaning.NERVE,
                            Optional.empty(),
                            Optional.of(new Coded("3057000", "SCT")),
                            Hazard.Kind.OTHER)),
            Optional.of(Approach.IN_PLANE));

    /** An image of one frame, and a run of eight; 0.2 mm per column, 0.1 mm per row. */
    private static final MarkFrames FRAMES = new MarkFrames() {
        @Override
        public Optional<Integer> count(String image) {
            return image.equals("still") ? Optional.of(1) : image.equals("run") ? Optional.of(8) : Optional.empty();
        }

        @Override
        public FrameGeometry geometry(String image, int number) {
            return new FrameGeometry(
                    400, 300, List.of(), Optional.of(new PixelSize(0.2, 0.1)), Optional.empty(), "probe");
        }
    };

    private static MarkRules.Rule rule(MarkMeaning meaning, String label) {
        return new MarkRules.Rule(meaning, Optional.of(new LabelPattern(label)), Optional.empty(), Hazard.Kind.OTHER);
    }

    private static PointPx at(double column, double row) {
        return new PointPx(column, row);
    }

    private static ForeignMark mark(String label, Form form, PointPx... points) {
        return on("still", List.of(), label, form, points);
    }

    private static ForeignMark on(String image, List<Integer> frames, String label, Form form, PointPx... points) {
        return new ForeignMark(
                "item 1.2",
                image,
                frames,
                form,
                List.of(points),
                List.of(Label.words(Kind.COMMENT, label)),
                Optional.empty());
    }

    private static ForeignMark stating(ForeignMark mark, double value, String unit) {
        return new ForeignMark(
                mark.at(),
                mark.image(),
                mark.frames(),
                mark.form(),
                mark.points(),
                mark.labels(),
                Optional.of(new Stated(value, unit)));
    }

    private static ForeignObject report(String uid, ForeignMark... marks) {
        return new ForeignObject(uid, List.of(), List.of(marks));
    }

    private static ForeignObject version(String uid, String of, ForeignMark... marks) {
        return new ForeignObject(uid, List.of(of), List.of(marks));
    }

    private static Gathered gather(ForeignObject... objects) {
        return Gathering.of(List.of(objects), List.of(), RULES, FRAMES);
    }

    private static final ForeignMark TARGET = mark("Target", Form.POINT, at(200, 150));
    private static final ForeignMark SHAFT = mark("shaft", Form.LINE, at(380, 20), at(230, 130));

    @Test
    void aRuleGivesAMarkItsMeaningWhateverTheCaseOfItsLetters() {
        Gathered gathered = gather(report("1", TARGET, SHAFT));
        assertThat(gathered.placed())
                .extracting(Placed::meaning)
                .containsExactly(MarkMeaning.TARGET, MarkMeaning.SHAFT);
        assertThat(gathered.placed().get(0).points()).containsExactly(at(200, 150));
        assertThat(gathered.questions()).isEmpty();
    }

    @Test
    void aMarkThatNamesNoImageItselfIsRemarkedOn() {
        ForeignMark assumed = new ForeignMark(
                TARGET.at(),
                TARGET.image(),
                TARGET.frames(),
                TARGET.form(),
                TARGET.points(),
                TARGET.labels(),
                Optional.empty(),
                true);
        Gathered gathered = gather(report("1", assumed));
        assertThat(gathered.placed()).hasSize(1);
        assertThat(gathered.remarks())
                .hasSize(1)
                .allMatch(remark -> remark.text().contains("does not say on which image"));
    }

    @Test
    void aCodeDoesAsWellAsALabel() {
        ForeignMark nerve = new ForeignMark(
                "item 1",
                "still",
                List.of(),
                Form.OUTLINE,
                List.of(at(10, 10), at(20, 10), at(20, 20)),
                List.of(new Label(Kind.SITE, "Nerve structure", Optional.of(new Coded("3057000", "SCT")))),
                Optional.empty());
        assertThat(gather(report("1", nerve)).placed())
                .extracting(Placed::meaning)
                .containsExactly(MarkMeaning.NERVE);
    }

    @Test
    void whatNoRuleKnowsIsListedAndNothingGuessed() {
        Gathered gathered =
                gather(report("1", mark("targets?", Form.POINT, at(1, 1)), mark("", Form.LINE, at(1, 1), at(9, 9))));
        assertThat(gathered.placed()).isEmpty();
        assertThat(gathered.unmatched()).hasSize(2);
        assertThat(gathered.unmatched().get(0).labels()).containsExactly("targets?");
    }

    @Test
    void aFormThatCannotMeanItIsListed() {
        Gathered gathered = gather(report("1", mark("target", Form.LINE, at(1, 1), at(9, 9))));
        assertThat(gathered.placed()).isEmpty();
        assertThat(gathered.unmatched().get(0).why()).contains("target").contains("a line");
    }

    @Test
    void theSameObjectTwiceAndInAnyOrderGivesTheSame() {
        ForeignObject first = report("1", TARGET, SHAFT);
        ForeignObject copy = report("2", SHAFT);
        List<ForeignObject> objects = Arrays.asList(first, copy, first);
        Gathered forwards = Gathering.of(objects, List.of(), RULES, FRAMES);
        Collections.reverse(objects);
        Gathered backwards = Gathering.of(objects, List.of(), RULES, FRAMES);
        assertThat(forwards.placed()).hasSize(2);
        assertThat(backwards.placed())
                .extracting(Placed::meaning)
                .containsExactlyInAnyOrder(MarkMeaning.TARGET, MarkMeaning.SHAFT);
    }

    @Test
    void aLaterVersionReplacesWhatItDrawsAgainAndLosesNothing() {
        ForeignMark moved = mark("target", Form.POINT, at(210, 160));
        Gathered gathered = gather(version("2", "1", moved), report("1", TARGET, SHAFT));
        assertThat(gathered.placed())
                .filteredOn(mark -> mark.meaning() == MarkMeaning.TARGET)
                .singleElement()
                .satisfies(mark -> assertThat(mark.points()).containsExactly(at(210, 160)));
        assertThat(gathered.placed()).extracting(Placed::meaning).contains(MarkMeaning.SHAFT);
        assertThat(gathered.remarks())
                .singleElement()
                .satisfies(remark -> assertThat(remark.text()).contains("shaft").contains("no deletion"));
        assertThat(gathered.questions()).isEmpty();
    }

    @Test
    void aRefusedVersionLeavesItsPredecessorStanding() {
        Gathered gathered = gather(report("1", TARGET), version("2", "1", mark("target", Form.POINT, at(900, 10))));
        assertThat(gathered.refused()).hasSize(1);
        assertThat(gathered.placed())
                .singleElement()
                .satisfies(mark -> assertThat(mark.points()).containsExactly(at(200, 150)));
    }

    @Test
    void versionsInACircleEnd() {
        assertThat(gather(version("1", "2", TARGET), version("2", "1", SHAFT)).placed())
                .hasSize(2);
    }

    @Test
    void twoDifferentTargetsAreAQuestionAndNeitherIsTaken() {
        Gathered gathered = gather(report("1", TARGET), report("2", mark("target", Form.POINT, at(220, 150))));
        assertThat(gathered.placed()).isEmpty();
        assertThat(gathered.questions())
                .singleElement()
                .satisfies(question -> assertThat(question.text()).startsWith("Which target?"));
    }

    @Test
    void aMissingFrameNumberIsAskedForAndNeverTakenAsTheFirst() {
        Gathered gathered = gather(report("1", on("run", List.of(), "target", Form.POINT, at(5, 5)), TARGET));
        assertThat(gathered.questions()).singleElement().satisfies(question -> {
            assertThat(question.text()).startsWith("Which frame?").contains("8 frames");
            assertThat(question.meaning()).contains(MarkMeaning.TARGET);
        });
        assertThat(gathered.placed())
                .singleElement()
                .satisfies(mark -> assertThat(mark.frame().image()).isEqualTo("still"));
    }

    @Test
    void oneImpossibleMarkRefusesItsWholeObjectAndNoOther() {
        Gathered gathered = gather(
                report("1", TARGET, on("run", List.of(9), "tip", Form.POINT, at(5, 5))),
                report("2", mark("skin", Form.LINE, at(0, 10), at(400, 10))),
                report("3", on("elsewhere", List.of(), "tip", Form.POINT, at(5, 5))));
        assertThat(gathered.placed()).extracting(Placed::meaning).containsExactly(MarkMeaning.SKIN);
        assertThat(gathered.refused())
                .extracting(Gathered.RefusedObject::object)
                .containsExactly("1", "3");
        assertThat(gathered.refused().get(0).why()).contains("frame 9").contains("8");
        assertThat(gathered.refused().get(1).why()).contains("does not hold");
    }

    @Test
    void aPointJustOutsideIsBroughtInAndFartherOutRefused() {
        Gathered inside = gather(report("1", mark("target", Form.POINT, at(400.9, 150))));
        assertThat(inside.placed().get(0).points()).containsExactly(at(400, 150));
        assertThat(inside.remarks()).hasSize(1);
        assertThat(gather(report("1", mark("target", Form.POINT, at(401.1, 150))))
                        .refused())
                .hasSize(1);
    }

    /** 3-4-5: 30 columns of 0.2 mm and 80 rows of 0.1 mm make 6 and 8, so 10 mm. */
    @Test
    void theirLengthIsComputedAgainAndADifferenceNamedWithBothValues() {
        ForeignMark line = mark("shaft", Form.LINE, at(100, 100), at(130, 180));
        assertThat(gather(report("1", stating(line, 10.1, "mm"))).remarks()).isEmpty();
        assertThat(gather(report("1", stating(line, 1.0, "cm"))).remarks()).isEmpty();
        assertThat(gather(report("1", stating(line, 1.0, "mm"))).remarks())
                .singleElement()
                .satisfies(
                        remark -> assertThat(remark.text()).contains("10.00 mm").contains("1.00 mm"));
        assertThat(gather(report("1", stating(line, 1.0, "[arb'U]{cm US Region}")))
                        .remarks())
                .singleElement()
                .satisfies(
                        remark -> assertThat(remark.text()).contains("10.00 mm").contains("no length"));
    }

    @Test
    void theirAngleIsComputedAgainInMillimetresNotPixels() {
        ForeignMark angle = mark("x", Form.ANGLE, at(150, 100), at(100, 100), at(150, 200));
        assertThat(gather(report("1", stating(angle, 45, "deg"))).remarks()).isEmpty();
        assertThat(gather(report("1", stating(angle, 63.4, "deg"))).remarks()).hasSize(1);
    }

    @Test
    void aCircleBecomesAnOutlineThatLeavesNothingOfItOut() {
        Gathered gathered = gather(report("1", mark("Artery", Form.CIRCLE, at(100, 100), at(130, 100))));
        Placed hazard = gathered.placed().get(0);
        assertThat(hazard.kind()).isEqualTo(Hazard.Kind.ARTERY);
        List<PointPx> corners = hazard.points();
        for (int i = 0; i < corners.size(); i++) {
            PointPx next = corners.get((i + 1) % corners.size());
            PointPx middle = at(
                    (corners.get(i).column() + next.column()) / 2,
                    (corners.get(i).row() + next.row()) / 2);
            assertThat(middle.distanceTo(at(100, 100))).isCloseTo(30, within(0.05));
        }
    }

    @Test
    void anEllipseIsDrawnByItsTwoAxes() {
        Placed hazard = gather(
                        report("1", mark("artery", Form.ELLIPSE, at(60, 100), at(140, 100), at(100, 80), at(100, 120))))
                .placed()
                .get(0);
        assertThat(hazard.points()).allSatisfy(corner -> {
            double share = Math.hypot((corner.column() - 100) / 40, (corner.row() - 100) / 20);
            assertThat(share).isBetween(1.0, 1.006);
        });
    }

    @Test
    void structuresOfOneNameAreToldApart() {
        Gathered gathered = gather(report(
                "1",
                mark("artery", Form.CIRCLE, at(50, 50), at(60, 50)),
                mark("artery", Form.CIRCLE, at(150, 50), at(160, 50))));
        assertThat(gathered.placed()).extracting(Placed::name).containsExactly("artery", "artery 2");
    }

    @Test
    void everyMarkIsAccountedForExactlyOnce() {
        ForeignMark nowhere = on("run", List.of(), "tip", Form.POINT, at(5, 5));
        ForeignMark unknown = mark("note", Form.POINT, at(5, 5));
        Gathered gathered = gather(report("1", TARGET, SHAFT, nowhere, unknown));
        assertThat(gathered.placed().size()
                        + gathered.unmatched().size()
                        + gathered.questions().size())
                .isEqualTo(4);
    }
}
