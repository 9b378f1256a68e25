// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.sight;

import dev.plumbline.plan.Approach;
import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Everything a site can set: both ladders, what to do at each sign, when to give up. Every sign has its words; those that end
 * the search have theirs here and not in a file.
 *
 * @param stops for every sign that does not end the search
 * @param passLimit passes with the tip never seen after which it is handed over, at least 1
 * @param fluidMl the counted amount of one try with fluid, above 0
 * @param giveUp the words of handing over, choosing another approach or abandoning
 */
public record SightRules(
        List<SightLadder> ladders,
        Map<StopSign, SightStep.Says> stops,
        int passLimit,
        BigDecimal fluidMl,
        SightStep.Says giveUp) {
    /** Said at blood and at signs of toxicity, whatever a file says. */
    public static final String TREAT = "Stop. Treat the patient by the local protocol.";

    private static final List<String> TREAT_MUST_NOT =
            List.of("Do not inject anything through this needle.", "Do not look for the needle now.");

    public SightRules {
        ladders = List.copyOf(ladders);
        EnumMap<StopSign, SightStep.Says> copy = new EnumMap<>(StopSign.class);
        copy.putAll(stops);
        stops = Map.copyOf(copy);
        for (Approach approach : Approach.values()) {
            if (ladders.stream().filter(l -> l.approach() == approach).count() != 1) {
                throw new IllegalArgumentException("There is not exactly one ladder for " + approach.word() + ".");
            }
        }
        for (StopSign sign : StopSign.values()) {
            if (sign.endsTheSearch() == copy.containsKey(sign)) {
                throw new IllegalArgumentException(
                        sign.endsTheSearch()
                                ? "The words for " + sign.word() + " are fixed and cannot be set."
                                : "There are no words for " + sign.word() + ".");
            }
        }
        if (passLimit < 1) {
            throw new IllegalArgumentException("At least one pass comes before giving up.");
        }
        if (fluidMl.signum() <= 0) {
            throw new IllegalArgumentException("The counted amount of fluid is above 0 mL.");
        }
    }

    public SightLadder ladder(Approach approach) {
        return ladders.stream()
                .filter(l -> l.approach() == approach)
                .findFirst()
                .orElseThrow();
    }

    /** What is said at a sign. */
    public SightStep.Says at(StopSign sign) {
        SightStep.Says says = stops.get(sign);
        return says == null ? new SightStep.Says(TREAT, sign.word(), TREAT_MUST_NOT) : says;
    }
}
