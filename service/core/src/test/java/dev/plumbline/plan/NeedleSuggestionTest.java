// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.geometry.Foundation;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Standing;
import dev.plumbline.needle.Gauge;
import dev.plumbline.needle.Needle;
import dev.plumbline.needle.NeedleCatalogue;
import dev.plumbline.needle.NeedleWish;
import dev.plumbline.needle.StockNeedle;
import dev.plumbline.needle.TipType;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class NeedleSuggestionTest {
    private static final Foundation CHOSEN = new Foundation(Standing.CHOSEN, "for this test");
    private static final NeedleCatalogue CATALOGUE = new NeedleCatalogue(
            List.of(gauge(22, 0.7, 0.4), gauge(25, 0.5, 0.2)),
            List.of(
                    new StockNeedle("long", TipType.SHORT_BEVEL, 100, 22, true),
                    new StockNeedle("thin", TipType.SHORT_BEVEL, 80, 25, false),
                    new StockNeedle("short", TipType.SHORT_BEVEL, 50, 22, true),
                    new StockNeedle("blunt", TipType.PENCIL_POINT, 70, 22, true)));

    private static Gauge gauge(int number, double outer, double inner) {
        return new Gauge(number, new Gauge.Diameters(outer, inner, CHOSEN), Optional.empty());
    }

    /** Depth 30 and entry 45: a path of 54.083 mm, 64.083 mm with the reserve. */
    private static Plan plan() {
        CaseFixture fixture = new CaseFixture();
        fixture.intent(new Intent.EntryDistance(45));
        return Plan.of(fixture.input());
    }

    private static Needle wishing(TipType... tips) {
        return new Needle(
                OptionalInt.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.of(new NeedleWish(List.of(tips), List.of(), Optional.empty())));
    }

    @Test
    void theShortestThatReachesWithReserveStandsFirst() {
        NeedleSuggestion suggestion = NeedleSuggestion.of(plan(), Needle.NOTHING_STATED, CATALOGUE);
        assertThat(suggestion.choices()).extracting(c -> c.needle().id()).containsExactly("thin", "long", "blunt");
        NeedleSuggestion.Choice first = suggestion.choices().get(0);
        assertThat(((Reading.Seen) first.needleLeft()).value()).isCloseTo(80 - 54.083, within(5e-4));
        assertThat(suggestion.text())
                .isEqualTo("Shortest of the list that reaches with reserve: 80 mm, 25 G, short bevel; leaves 26 mm"
                        + " outside.");
    }

    @Test
    void theResistanceIsThatOfTheBoresAlone() {
        NeedleSuggestion.Choice thin = NeedleSuggestion.of(plan(), Needle.NOTHING_STATED, CATALOGUE)
                .choices()
                .get(0);
        assertThat(thin.resistanceRelative()).isCloseTo(16, within(1e-9)); // half the bore, to the fourth
        assertThat(thin.referenceGauge()).isEqualTo(22);
        assertThat(thin.resistanceText()).contains("22 G needle of the same length", "real systems", "far higher");
    }

    @Test
    void aWishGoesBeforeLength() {
        NeedleSuggestion wished = NeedleSuggestion.of(plan(), wishing(TipType.PENCIL_POINT), CATALOGUE);
        assertThat(wished.choices()).extracting(c -> c.needle().id()).containsExactly("blunt");
        assertThat(NeedleSuggestion.of(plan(), wishing(TipType.TUOHY), CATALOGUE)
                        .text())
                .contains("65 mm are needed with reserve, and none of the list fits the wish");
    }

    @Test
    void withoutAPathNothingIsChosen() {
        CaseFixture fixture = new CaseFixture();
        fixture.needleLength = OptionalDouble.of(20);
        NeedleSuggestion none = NeedleSuggestion.of(Plan.of(fixture.input()), Needle.NOTHING_STATED, CATALOGUE);
        assertThat(none.choices()).isEmpty();
        assertThat(none.text()).isEqualTo("Without a path no needle can be chosen.");
    }
}
