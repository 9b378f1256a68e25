// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.needle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.geometry.Foundation;
import dev.plumbline.geometry.Standing;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class NeedleChoiceTest {
    private static final Foundation MADE_UP = new Foundation(Standing.CHOSEN, "made up for this test");

    static NeedleCatalogue catalogue(StockNeedle... needles) {
        return new NeedleCatalogue(
                List.of(
                        new Gauge(20, new Gauge.Diameters(0.9, 0.6, MADE_UP), Optional.empty()),
                        new Gauge(22, new Gauge.Diameters(0.7, 0.4, MADE_UP), Optional.empty()),
                        new Gauge(25, new Gauge.Diameters(0.5, 0.3, MADE_UP), Optional.empty())),
                List.of(needles));
    }

    private static StockNeedle needle(TipType tip, double lengthMm, int gauge) {
        return new StockNeedle(tip.word() + lengthMm + "x" + gauge, tip, lengthMm, gauge, true);
    }

    private static final StockNeedle SHORT_50 = needle(TipType.SHORT_BEVEL, 50, 22);
    private static final StockNeedle SHORT_80_THIN = needle(TipType.SHORT_BEVEL, 80, 25);
    private static final StockNeedle SHORT_80 = needle(TipType.SHORT_BEVEL, 80, 22);
    private static final StockNeedle SHORT_100 = needle(TipType.SHORT_BEVEL, 100, 20);
    private static final StockNeedle TUOHY_60 = needle(TipType.TUOHY, 60, 20);
    private static final NeedleCatalogue SHELF = catalogue(SHORT_100, SHORT_50, SHORT_80_THIN, SHORT_80, TUOHY_60);

    private static NeedleChoice.Reaches reaches(NeedleWish wish, double neededMm) {
        return (NeedleChoice.Reaches) NeedleChoice.from(SHELF, wish, neededMm);
    }

    @Test
    void takesTheShortestThatReaches() {
        NeedleWish anyLength = new NeedleWish(List.of(TipType.SHORT_BEVEL), List.of(), Optional.empty());
        assertThat(reaches(anyLength, 40).first()).isEqualTo(SHORT_50);
        assertThat(reaches(anyLength, 50).first()).isEqualTo(SHORT_50);
        assertThat(reaches(anyLength, 50.001).first().lengthMm()).isEqualTo(80);
    }

    @Test
    void tipTypeGoesBeforeLength() {
        NeedleWish wish = new NeedleWish(List.of(TipType.SHORT_BEVEL, TipType.TUOHY), List.of(), Optional.empty());
        assertThat(reaches(wish, 55).first().tipType()).isEqualTo(TipType.SHORT_BEVEL);
        assertThat(reaches(wish, 55).passedOver()).isEmpty();
    }

    @Test
    void lengthGoesBeforeGauge() {
        NeedleWish wish = new NeedleWish(List.of(TipType.SHORT_BEVEL), List.of(20, 22), Optional.empty());
        assertThat(reaches(wish, 60).first()).isEqualTo(SHORT_80);
    }

    @Test
    void gaugeDecidesLast() {
        NeedleWish thin = new NeedleWish(List.of(TipType.SHORT_BEVEL), List.of(25, 22), Optional.empty());
        NeedleWish thick = new NeedleWish(List.of(TipType.SHORT_BEVEL), List.of(22, 25), Optional.empty());
        assertThat(reaches(thin, 60).inOrder()).containsExactly(SHORT_80_THIN, SHORT_80);
        assertThat(reaches(thick, 60).first()).isEqualTo(SHORT_80);
    }

    @Test
    void saysWhichPreferredTipWasTooShort() {
        NeedleWish wish = new NeedleWish(List.of(TipType.TUOHY, TipType.SHORT_BEVEL), List.of(), Optional.empty());
        assertThat(reaches(wish, 70).first().tipType()).isEqualTo(TipType.SHORT_BEVEL);
        assertThat(reaches(wish, 70).passedOver()).containsExactly(TipType.TUOHY);
    }

    @Test
    void saysHowLongTheLongestIsWhenNoneReaches() {
        assertThat(NeedleChoice.from(SHELF, NeedleWish.ANY, 120))
                .isEqualTo(new NeedleChoice.NoneReaches(120, OptionalDouble.of(100)));
        NeedleWish facet = new NeedleWish(List.of(TipType.FACET), List.of(), Optional.empty());
        assertThat(NeedleChoice.from(SHELF, facet, 20))
                .isEqualTo(new NeedleChoice.NoneReaches(20, OptionalDouble.empty()));
    }

    @Test
    void keepsToTheEchogenicWish() {
        NeedleWish plain = new NeedleWish(List.of(), List.of(), Optional.of(false));
        assertThat(NeedleChoice.from(SHELF, plain, 20)).isInstanceOf(NeedleChoice.NoneReaches.class);
    }

    @Test
    void refusesALengthThatIsNone() {
        assertThatThrownBy(() -> NeedleChoice.from(SHELF, NeedleWish.ANY, 0)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> NeedleChoice.from(SHELF, NeedleWish.ANY, Double.NaN))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void aCatalogueKnowsTheGaugeOfEveryNeedle() {
        assertThatThrownBy(() -> catalogue(needle(TipType.FACET, 50, 23)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("gauge 23");
        assertThatThrownBy(() -> catalogue(SHORT_50, SHORT_50)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aStockNeedleCanBeStatedInACase() {
        Needle stated = SHORT_50.asStated();
        assertThat(stated.gauge()).hasValue(22);
        assertThat(stated.lengthMm()).hasValue(50);
        assertThat(stated.echogenic()).contains(true);
    }
}
