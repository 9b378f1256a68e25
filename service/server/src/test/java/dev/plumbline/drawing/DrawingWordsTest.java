// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Reason;
import dev.plumbline.plan.Limit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class DrawingWordsTest {
    /** Words the product never uses, of itself or of what it shows. */
    private static final List<String> NEVER = List.of(
            "safe",
            "clear of",
            "no hazards",
            "correct",
            "optimal",
            "recommended",
            "on target",
            "hit",
            "miss",
            "error",
            "accurate",
            "guided",
            "competent",
            "plumbline confirms",
            "no complications");

    static Stream<Map.Entry<String, Scene>> scenes() {
        return Gallery.scenes().entrySet().stream();
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void usesNoneOfTheWordsThatPromiseTooMuch(Map.Entry<String, Scene> scene) {
        String text = SvgReader.of(SvgDrawing.text(scene.getValue(), Optional.empty()))
                .text()
                .toLowerCase(Locale.ROOT);
        for (String word : NEVER) {
            assertThat(Pattern.compile("\\b" + Pattern.quote(word) + "\\b")
                            .matcher(text)
                            .find())
                    .as(word)
                    .isFalse();
        }
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void usesNoneOfThemInTheLegend(Role role) {
        assertThat(NEVER)
                .noneMatch(word -> Pattern.compile("\\b" + word + "\\b")
                        .matcher(role.legend())
                        .find());
    }

    @ParameterizedTest
    @EnumSource(DeviationQuantity.class)
    void givesBothDirectionsOfADifferenceAWord(DeviationQuantity quantity) {
        assertThat(DifferenceWords.direction(quantity, 1)).isNotEqualTo(DifferenceWords.direction(quantity, -1));
    }

    @Test
    void saysOnlyWhatTheMeasurementCouldShow() {
        assertThat(DifferenceWords.than(DeviationQuantity.ANGLE_TO_SKIN, new Reading.Seen(4.46, 0.8)))
                .isEqualTo("4.5\u00b0 steeper than the plan");
        assertThat(DifferenceWords.than(DeviationQuantity.ANGLE_TO_SKIN, new Reading.Seen(-4.46, 0.8)))
                .isEqualTo("4.5\u00b0 flatter than the plan");
        assertThat(DifferenceWords.than(DeviationQuantity.ANGLE_TO_SKIN, new Reading.Seen(1.5, 0.8)))
                .isEqualTo("no difference this measurement could show");
    }

    @Test
    void neverShowsANegativeZero() {
        assertThat(Wording.number(-0.04, 1)).isEqualTo("0.0");
        assertThat(Wording.signed(-0.04, DeviationQuantity.PATH)).isEqualTo("0.0");
        assertThat(Wording.signed(0.06, DeviationQuantity.PATH)).isEqualTo("+0.1");
        assertThat(Wording.number(-0.06, 1)).isEqualTo("-0.1");
        assertThat(Wording.number(7, 0)).isEqualTo("7");
    }

    @Test
    void spellsNamesOut() {
        assertThat(Wording.spelledOut(Reason.TIP_NOT_CONFIRMED.word())).isEqualTo("tip not confirmed");
        assertThat(Wording.limit(Limit.of(Limit.Kind.LEAD_IN))).isEqualTo("lead-in");
        assertThat(Wording.limit(new Limit(Limit.Kind.HAZARD, Optional.of("artery"))))
                .isEqualTo("hazard artery");
        assertThat(Wording.name("  two\nlines\u0007 ")).isEqualTo("two lines");
    }
}
