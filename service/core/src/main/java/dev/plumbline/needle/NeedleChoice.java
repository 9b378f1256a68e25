// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.needle;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;

/**
 * The shortest needle that reaches with the reserve: tip type first, then length, then gauge. A suggestion out of what the
 * site has; the person takes what the person wants.
 *
 * <p>Source: order of choice, common practice, no source.
 */
public sealed interface NeedleChoice {
    /**
     * At least one needle reaches.
     *
     * @param inOrder all that fit the wish and reach, the suggested one first
     * @param passedOver tip types that were preferred but have no needle that reaches, in the order of preference
     */
    record Reaches(List<StockNeedle> inOrder, List<TipType> passedOver) implements NeedleChoice {
        public Reaches {
            inOrder = List.copyOf(inOrder);
            passedOver = List.copyOf(passedOver);
            if (inOrder.isEmpty()) {
                throw new IllegalArgumentException("Somebody reaches.");
            }
        }

        public StockNeedle first() {
            return inOrder.get(0);
        }
    }

    /**
     * No needle that fits the wish is long enough.
     *
     * @param longestMm of those that fit the wish; empty when none fits
     */
    record NoneReaches(double neededMm, OptionalDouble longestMm) implements NeedleChoice {}

    /**
     * Chooses from a catalogue.
     *
     * @param neededMm path and reserve together, the plan's {@code shortestNeedleMm}
     * @throws Refusal {@link Problem.InvalidValue} when {@code neededMm} is no positive length
     */
    static NeedleChoice from(NeedleCatalogue catalogue, NeedleWish wish, double neededMm) {
        if (!(neededMm > 0) || Double.isInfinite(neededMm)) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "A needle of " + neededMm + " mm cannot be chosen.", "Give the path with its reserve in mm."));
        }
        List<StockNeedle> fitting =
                catalogue.needles().stream().filter(wish::takes).toList();
        List<TipType> tips = order(wish.tipTypes(), fitting, StockNeedle::tipType);
        List<Integer> gauges = order(wish.gauges(), fitting, StockNeedle::gauge);
        List<StockNeedle> inOrder = new ArrayList<>(fitting);
        inOrder.removeIf(needle -> needle.lengthMm() < neededMm);
        inOrder.sort((a, b) -> {
            int byTip = Integer.compare(tips.indexOf(a.tipType()), tips.indexOf(b.tipType()));
            int byLength = byTip != 0 ? byTip : Double.compare(a.lengthMm(), b.lengthMm());
            return byLength != 0 ? byLength : Integer.compare(gauges.indexOf(a.gauge()), gauges.indexOf(b.gauge()));
        });
        if (inOrder.isEmpty()) {
            return new NoneReaches(
                    neededMm,
                    fitting.stream().mapToDouble(StockNeedle::lengthMm).max());
        }
        TipType taken = inOrder.get(0).tipType();
        return new Reaches(inOrder, tips.subList(0, tips.indexOf(taken)));
    }

    private static <V> List<V> order(List<V> wished, List<StockNeedle> fitting, Function<StockNeedle, V> property) {
        if (!wished.isEmpty()) {
            return wished;
        }
        Set<V> listed = new LinkedHashSet<>();
        fitting.forEach(needle -> listed.add(property.apply(needle)));
        return List.copyOf(listed);
    }
}
