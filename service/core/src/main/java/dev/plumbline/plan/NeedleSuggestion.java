// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Reading;
import dev.plumbline.needle.Bore;
import dev.plumbline.needle.Gauge;
import dev.plumbline.needle.Needle;
import dev.plumbline.needle.NeedleCatalogue;
import dev.plumbline.needle.NeedleChoice;
import dev.plumbline.needle.NeedleWish;
import dev.plumbline.needle.StockNeedle;
import dev.plumbline.needle.TipType;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Needles of a catalogue that reach the target of a plan with the reserve, the suggested one first.
 *
 * @param choices at most {@link #MOST}; empty where none reaches or the plan has no path
 */
public record NeedleSuggestion(List<Choice> choices, String text) {
    /** More is no help to choose from; a design choice. */
    public static final int MOST = 5;

    /** The gauge that resistances are compared with where the catalogue lists it; a design choice. */
    private static final int USUAL_REFERENCE_GAUGE = 22;

    /** Any fluid and flow give the same ratio; water, 10 mL in a minute. */
    private static final Bore.Flow ANY_FLOW = new Bore.Flow(1, 10);

    public NeedleSuggestion {
        choices = List.copyOf(choices);
    }

    /**
     * One needle.
     *
     * @param needleLeft of its length outside the skin, in millimetres
     * @param resistanceRelative resistance of the needle alone over that of one of the same length and the reference gauge
     */
    public record Choice(
            StockNeedle needle, Gauge gauge, Reading needleLeft, double resistanceRelative, int referenceGauge) {
        /** Never without saying what the number is not. */
        public String resistanceText() {
            return String.format(
                    Locale.ROOT,
                    "%.2g times that of a %d G needle of the same length. %s",
                    resistanceRelative,
                    referenceGauge,
                    Bore.WORDS);
        }
    }

    /** For the path of a plan and what the case wishes of a needle. */
    public static NeedleSuggestion of(Plan plan, Needle stated, NeedleCatalogue catalogue) {
        if (!(plan.readings().of(PlanQuantity.SHORTEST_NEEDLE) instanceof Reading.Seen needed)) {
            return new NeedleSuggestion(List.of(), "Without a path no needle can be chosen.");
        }
        NeedleWish wish = stated.wish().orElse(NeedleWish.ANY);
        NeedleChoice choice = NeedleChoice.from(catalogue, wish, needed.value());
        if (choice instanceof NeedleChoice.NoneReaches none) {
            return new NeedleSuggestion(List.of(), noneReaches(none));
        }
        return reaching((NeedleChoice.Reaches) choice, wish, plan.readings().of(PlanQuantity.PATH), catalogue);
    }

    private static NeedleSuggestion reaching(
            NeedleChoice.Reaches reaches, NeedleWish wish, Reading path, NeedleCatalogue catalogue) {
        List<Choice> choices = reaches.inOrder().stream()
                .limit(MOST)
                .map(needle -> one(needle, path, catalogue))
                .toList();
        List<TipType> passedOver = wish.tipTypes().isEmpty() ? List.of() : reaches.passedOver();
        return new NeedleSuggestion(choices, words(choices.get(0), passedOver));
    }

    private static Choice one(StockNeedle needle, Reading path, NeedleCatalogue catalogue) {
        Gauge gauge = catalogue.gauge(needle.gauge()).orElseThrow();
        Gauge reference = catalogue.gauge(USUAL_REFERENCE_GAUGE).orElse(gauge);
        Reading left = path.fold(
                seen -> new Reading.Seen(needle.lengthMm() - seen.value(), seen.standardUncertainty()), why -> why);
        return new Choice(
                needle,
                gauge,
                left,
                pressure(gauge, needle.lengthMm()) / pressure(reference, needle.lengthMm()),
                reference.number());
    }

    private static double pressure(Gauge gauge, double lengthMm) {
        return new Bore(gauge.nominal().innerMm(), lengthMm).pressureDropKPa(ANY_FLOW);
    }

    private static String noneReaches(NeedleChoice.NoneReaches none) {
        String needed =
                "No needle of the list reaches: " + (long) Math.ceil(none.neededMm()) + " mm are needed with reserve";
        return none.longestMm().isPresent()
                ? needed + ", the longest that fits the wish has "
                        + Words.mm(none.longestMm().getAsDouble()) + "."
                : needed + ", and none of the list fits the wish.";
    }

    private static String words(Choice first, List<TipType> passedOver) {
        StockNeedle needle = first.needle();
        StringBuilder text = new StringBuilder("Shortest of the list that reaches with reserve: ");
        text.append(Words.mm(needle.lengthMm()))
                .append(", ")
                .append(needle.gauge())
                .append(" G, ");
        text.append(tip(needle.tipType())).append(needle.echogenic() ? ", echogenic" : "");
        if (first.needleLeft() instanceof Reading.Seen left) {
            text.append("; leaves ").append(Words.mm(left.value())).append(" outside");
        }
        text.append('.');
        if (!passedOver.isEmpty()) {
            text.append(" Preferred, but none long enough: ")
                    .append(passedOver.stream().map(NeedleSuggestion::tip).collect(Collectors.joining(", ")))
                    .append('.');
        }
        return text.toString();
    }

    private static String tip(TipType tip) {
        return switch (tip) {
            case SHORT_BEVEL -> "short bevel";
            case LONG_BEVEL -> "long bevel";
            case PENCIL_POINT -> "pencil point";
            case TUOHY -> "Tuohy tip";
            case FACET -> "facet tip";
        };
    }
}
