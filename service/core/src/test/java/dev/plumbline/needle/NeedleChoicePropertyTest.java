// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.needle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

class NeedleChoicePropertyTest {
    private record Kind(TipType tip, int lengthMm, int gauge) {}

    @Provide
    Arbitrary<NeedleCatalogue> shelves() {
        return Combinators.combine(
                        Arbitraries.of(TipType.values()),
                        Arbitraries.integers().between(3, 15),
                        Arbitraries.of(20, 22, 25))
                .as((tip, tens, gauge) -> new Kind(tip, 10 * tens, gauge))
                .list()
                .uniqueElements()
                .ofMaxSize(20)
                .map(kinds -> {
                    List<StockNeedle> needles = new ArrayList<>();
                    for (Kind kind : kinds) {
                        needles.add(new StockNeedle(
                                "n" + needles.size(), kind.tip(), kind.lengthMm(), kind.gauge(), false));
                    }
                    return NeedleChoiceTest.catalogue(needles.toArray(StockNeedle[]::new));
                });
    }

    @Property
    void noNeedleOfTheSameTipIsShorterAndStillReaches(
            @ForAll("shelves") NeedleCatalogue shelf, @ForAll @IntRange(min = 1, max = 160) int neededMm) {
        NeedleWish wish = new NeedleWish(List.of(TipType.FACET, TipType.TUOHY), List.of(), Optional.empty());
        List<StockNeedle> reaching = shelf.needles().stream()
                .filter(n -> wish.tipTypes().contains(n.tipType()) && n.lengthMm() >= neededMm)
                .toList();
        NeedleChoice choice = NeedleChoice.from(shelf, wish, neededMm);
        if (reaching.isEmpty()) {
            assertThat(choice).isInstanceOf(NeedleChoice.NoneReaches.class);
            return;
        }
        StockNeedle first = ((NeedleChoice.Reaches) choice).first();
        assertThat(reaching).contains(first);
        assertThat(reaching)
                .noneMatch(n -> n.tipType() == first.tipType() && n.lengthMm() < first.lengthMm())
                .noneMatch(n -> n.tipType() == TipType.FACET && first.tipType() == TipType.TUOHY);
    }
}
