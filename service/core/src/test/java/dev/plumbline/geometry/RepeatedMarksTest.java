// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.geometry.RepeatedMarks.Used;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class RepeatedMarksTest {
    private static PointPx at(double column, double row) {
        return new PointPx(column, row);
    }

    private static Repeat by(String name, double column, double row) {
        return new Repeat(column, row, name.isEmpty() ? Optional.empty() : Optional.of(name));
    }

    @Test
    void repeatsWithoutANameAreOnePersons() {
        List<Repeat> repeats = List.of(by("", 10, 20), by("", 12, 20), by("", 14, 26));
        assertThat(RepeatedMarks.of(repeats))
                .isEqualTo(RepeatedMarks.byOnePerson(List.of(at(10, 20), at(12, 20), at(14, 26))));
    }

    @Test
    void repeatsAreGroupedByWhoSetThem() {
        List<Repeat> repeats = List.of(by("A", 9, 9), by("B", 13, 13), by("A", 11, 11), by("B", 15, 15));
        assertThat(RepeatedMarks.of(repeats))
                .isEqualTo(RepeatedMarks.byPersons(
                        List.of(List.of(at(9, 9), at(11, 11)), List.of(at(13, 13), at(15, 15)))));
    }

    @Test
    void twoMarksAreTooFewToTellASpread() {
        assertThatThrownBy(() -> RepeatedMarks.of(List.of(by("", 1, 1), by("", 2, 2))))
                .isInstanceOfSatisfying(
                        Refusal.class,
                        refusal -> assertThat(refusal.problem().detail()).contains("too few"));
    }

    @Test
    void aMarkSetSeveralTimesIsKnownAsWellAsItsMean() {
        PointPx mean = PointPx.meanOf(List.of(by("", 10, 20), by("", 12, 20), by("", 14, 26)));
        assertThat(mean.column()).isEqualTo(12);
        assertThat(mean.row()).isEqualTo(22);
        GradientInputs inputs = new GradientInputs();
        CaseInputs<Gradient> marks = new CaseInputs<>(inputs, InputUncertainty.NOTHING_STATED, new Extents());
        assertThat(marks.mark(mean).column().norm()).isCloseTo(Math.sqrt(8.0 / 3), within(1e-12));
        assertThat(marks.mark(at(12, 22)).column().norm()).isCloseTo(1, within(1e-12));
    }

    @Test
    void onePersonGivesMeanSpreadAndBothUncertainties() {
        // Columns 10 12 14: mean 12, s 2. Rows 20 20 26: mean 22, s sqrt(12). Pooled sqrt((4 + 12)/2).
        RepeatedMarks marks = RepeatedMarks.byOnePerson(List.of(at(10, 20), at(12, 20), at(14, 26)));
        assertThat(marks.mean()).isEqualTo(at(12, 22));
        assertThat(marks.sdColumnPx()).isCloseTo(2, within(1e-12));
        assertThat(marks.sdRowPx()).isCloseTo(Math.sqrt(12), within(1e-12));
        assertThat(marks.markPx(Used.ONE_MARK)).isCloseTo(Math.sqrt(8), within(1e-12));
        assertThat(marks.markPx(Used.MEAN_OF_MARKS)).isCloseTo(Math.sqrt(8.0 / 3), within(1e-12));
        assertThat(marks.marks()).isEqualTo(3);
    }

    @Test
    void severalPeopleAddWhatLiesBetweenThem() {
        // Means 10 and 14 (variance 8); within 2 each, two marks each: one mark 8 + 2 (1 - 1/2) = 9; mean sqrt(8/2).
        RepeatedMarks marks =
                RepeatedMarks.byPersons(List.of(List.of(at(9, 9), at(11, 11)), List.of(at(13, 13), at(15, 15))));
        assertThat(marks.mean()).isEqualTo(at(12, 12));
        assertThat(marks.sdColumnPx()).isCloseTo(3, within(1e-12));
        assertThat(marks.markPx(Used.ONE_MARK)).isCloseTo(3, within(1e-12));
        assertThat(marks.markPx(Used.MEAN_OF_MARKS)).isCloseTo(2, within(1e-12));
        assertThat(marks.persons()).isEqualTo(2);
        assertThat(marks.marks()).isEqualTo(4);
    }

    @Test
    void everybodyMarkingOnceIsTheSpreadOfThesePeople() {
        RepeatedMarks marks =
                RepeatedMarks.byPersons(List.of(List.of(at(10, 5)), List.of(at(12, 7)), List.of(at(14, 9))));
        assertThat(marks.markPx(Used.ONE_MARK)).isCloseTo(2, within(1e-12));
        assertThat(marks.markPx(Used.MEAN_OF_MARKS)).isCloseTo(2 / Math.sqrt(3), within(1e-12));
    }

    @Test
    void peopleWhoAgreeBetterThanOneHandRepeatsStillHaveThatHandsSpread() {
        RepeatedMarks marks =
                RepeatedMarks.byPersons(List.of(List.of(at(8, 8), at(12, 12)), List.of(at(8, 8), at(12, 12))));
        assertThat(marks.markPx(Used.ONE_MARK)).isCloseTo(Math.sqrt(8), within(1e-12));
    }

    @Test
    void marksThatAgreeToThePixelAreNotKnownWithoutDoubt() {
        RepeatedMarks marks = RepeatedMarks.byOnePerson(List.of(at(10, 20), at(10, 20), at(10, 20), at(10, 20)));
        assertThat(marks.sdColumnPx()).isZero();
        assertThat(marks.markPx(Used.ONE_MARK)).isCloseTo(0.288675, within(5e-7));
        assertThat(marks.markPx(Used.MEAN_OF_MARKS)).isCloseTo(0.288675 / 2, within(5e-7));
    }

    @Test
    void becomesTheInputUncertaintyOfTheMarksOnly() {
        RepeatedMarks marks = RepeatedMarks.byOnePerson(List.of(at(10, 20), at(12, 22), at(14, 24)));
        InputUncertainty stated = new InputUncertainty(
                OptionalDouble.of(1), OptionalDouble.of(0.02), InputUncertainty.NOTHING_STATED.scannerTolerance());
        InputUncertainty used = marks.applyTo(stated, Used.ONE_MARK);
        assertThat(used.markPxOrDefault()).isCloseTo(2, within(1e-12));
        assertThat(used.scaleRelativeOrDefault()).isEqualTo(0.02);
    }

    @Test
    void refusesFewerMarksThanShowASpread() {
        assertThatThrownBy(() -> RepeatedMarks.byOnePerson(List.of(at(1, 1)))).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> RepeatedMarks.byPersons(List.of(List.of(at(1, 1), at(2, 2)))))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> RepeatedMarks.byPersons(List.of(List.of(at(1, 1)), List.of())))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("marked nothing");
    }
}
