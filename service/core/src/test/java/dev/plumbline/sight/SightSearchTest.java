// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.sight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.plan.Approach;
import dev.plumbline.problem.Refusal;
import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SightSearchTest {
    private static final SightStep.Says SAYS = new SightStep.Says("Do it.", "Because.", List.of());
    private static final List<Seen> IN_PLANE = List.of(
            Seen.NOTHING,
            Seen.NEAR_PART,
            Seen.MIDDLE_PART,
            Seen.FAR_PART,
            Seen.SHAFT_FAINT,
            Seen.SHAFT_NO_TIP,
            Seen.NOT_SURE);
    private static final List<Seen> OUT_OF_PLANE = List.of(Seen.NO_DOT, Seen.DOT_TIP_OR_SHAFT, Seen.NOT_SURE);

    static SightStep step(String id, List<Seen> when, Part moves, NeedleUse needle, Measure measure) {
        return new SightStep(
                id,
                Optional.empty(),
                when,
                SAYS,
                new SightStep.Hands(moves, Part.NOTHING, needle, measure),
                new SightStep.Limits(needle == NeedleUse.FLUID ? 2 : 1, false, needle == NeedleUse.WITHDRAWN));
    }

    static SightStep hold(List<Seen> when) {
        return step("hold", when, Part.NOTHING, NeedleUse.STILL, Measure.NONE);
    }

    static SightStep withdraw(List<Seen> when) {
        return step("withdraw", when, Part.NOTHING, NeedleUse.WITHDRAWN, Measure.NONE);
    }

    static SightLadder inPlane(SightStep... steps) {
        return new SightLadder(Approach.IN_PLANE, List.of(steps), SAYS);
    }

    static final SightLadder SMALL_IN_PLANE = inPlane(
            hold(IN_PLANE),
            new SightStep(
                    "tooDeep",
                    Optional.empty(),
                    IN_PLANE,
                    SAYS,
                    new SightStep.Hands(Part.NOTHING, Part.WHOLE_PROBE, NeedleUse.WITHDRAWN, Measure.NONE),
                    new SightStep.Limits(1, true, false)),
            step("slide", List.of(Seen.NOTHING), Part.WHOLE_PROBE, NeedleUse.STILL, Measure.BEAM_THICKNESS),
            step("rotate", List.of(Seen.NEAR_PART), Part.FAR_END, NeedleUse.STILL, Measure.ROTATION_BOUND),
            step("fluid", IN_PLANE, Part.NOTHING, NeedleUse.FLUID, Measure.FLUID),
            withdraw(IN_PLANE));
    static final SightLadder SMALL_OUT_OF_PLANE =
            new SightLadder(Approach.OUT_OF_PLANE, List.of(hold(OUT_OF_PLANE), withdraw(OUT_OF_PLANE)), SAYS);

    static Map<StopSign, SightStep.Says> stops() {
        Map<StopSign, SightStep.Says> all = new EnumMap<>(StopSign.class);
        for (StopSign sign : StopSign.values()) {
            if (!sign.endsTheSearch()) {
                all.put(sign, new SightStep.Says("Stop at " + sign.word() + ".", "Because.", List.of()));
            }
        }
        return all;
    }

    static SightRules rules(SightLadder inPlane, Map<StopSign, SightStep.Says> stops, int passLimit) {
        return new SightRules(List.of(inPlane, SMALL_OUT_OF_PLANE), stops, passLimit, new BigDecimal("1.0"), SAYS);
    }

    private static final SightSearch SEARCH = new SightSearch(rules(SMALL_IN_PLANE, stops(), 3));

    private static SightQuestion ask(Seen seen, Set<StopSign> signs, List<String> tried, int passes) {
        return new SightQuestion(Approach.IN_PLANE, seen, signs, tried, passes, false, false, NeedleInside.UNKNOWN);
    }

    private static SightQuestion inside(Seen seen, List<String> tried, boolean held, NeedleInside inside) {
        return new SightQuestion(Approach.IN_PLANE, seen, Set.of(), tried, 0, held, false, inside);
    }

    private static NeedleInside geometry(double leadIn, double path, double in, double seenTo, double angle) {
        return new NeedleInside(
                OptionalDouble.of(leadIn),
                OptionalDouble.of(path),
                OptionalDouble.of(in),
                OptionalDouble.of(seenTo),
                OptionalDouble.of(angle),
                OptionalDouble.of(1));
    }

    @Test
    void walksTheRungsInOrder() {
        assertThat(SEARCH.next(ask(Seen.NOTHING, Set.of(), List.of(), 0)).step())
                .contains("hold");
        assertThat(SEARCH.next(ask(Seen.NOTHING, Set.of(), List.of("hold"), 0)).step())
                .contains("slide");
        assertThat(SEARCH.next(ask(Seen.NOTHING, Set.of(), List.of("hold", "slide"), 0))
                        .step())
                .contains("fluid");
    }

    @Test
    void aChangeOfWhatIsSeenTakesTheRungsOfThat() {
        assertThat(SEARCH.next(ask(Seen.NEAR_PART, Set.of(), List.of("hold", "slide"), 0))
                        .step())
                .contains("rotate");
    }

    @Test
    void fluidIsTriedTwiceAtMost() {
        assertThat(SEARCH.next(ask(Seen.FAR_PART, Set.of(), List.of("hold", "fluid"), 0))
                        .step())
                .contains("fluid");
        assertThat(SEARCH.next(ask(Seen.FAR_PART, Set.of(), List.of("hold", "fluid", "fluid"), 0))
                        .step())
                .contains("withdraw");
    }

    @Test
    void fluidCarriesTheSitesAmount() {
        assertThat(SEARCH.next(ask(Seen.FAR_PART, Set.of(), List.of("hold"), 0)).magnitude())
                .contains(new Advice.Magnitude(Measure.FLUID, new BigDecimal("1.0")));
    }

    @Test
    void afterWithdrawingThePassIsCounted() {
        Advice advice = SEARCH.next(ask(Seen.NOTHING, Set.of(), List.of("hold", "withdraw"), 0));
        assertThat(advice.kind()).isEqualTo(Advice.Kind.NEW_PASS);
        assertThat(advice.passesLeft()).isEqualTo(2);
    }

    @Test
    void theLastPassEndsInGivingUp() {
        assertThat(SEARCH.next(ask(Seen.NOTHING, Set.of(), List.of("withdraw"), 2))
                        .kind())
                .isEqualTo(Advice.Kind.GIVE_UP);
        assertThat(SEARCH.next(ask(Seen.NOTHING, Set.of(), List.of(), 3)).kind())
                .isEqualTo(Advice.Kind.GIVE_UP);
    }

    @Test
    void aSeenTipLeavesTheLadder() {
        assertThat(SEARCH.next(ask(Seen.SHAFT_AND_TIP, Set.of(), List.of(), 3)).kind())
                .isEqualTo(Advice.Kind.CARRY_ON);
    }

    @Test
    void bloodEndsTheSearchInTheProgramsOwnWords() {
        Advice advice = SEARCH.next(ask(Seen.NOTHING, Set.of(StopSign.PAIN, StopSign.BLOOD), List.of(), 0));
        assertThat(advice.kind()).isEqualTo(Advice.Kind.TREAT);
        assertThat(advice.says().action()).isEqualTo("Stop. Treat the patient by the local protocol.");
        assertThat(advice.signs()).containsExactly(StopSign.BLOOD, StopSign.PAIN);
    }

    @Test
    void rotationBoundIsASizeWithoutADirection() {
        // asin(1 / (2 * 20 cos 45)) = 2.0255 degrees, upwards on one decimal.
        Advice advice = SEARCH.next(inside(Seen.NEAR_PART, List.of("hold"), false, geometry(10, 60, 30, 20, 45)));
        assertThat(advice.magnitude()).contains(new Advice.Magnitude(Measure.ROTATION_BOUND, new BigDecimal("2.1")));
    }

    @Test
    void withoutNumbersThereIsNoMagnitude() {
        assertThat(SEARCH.next(ask(Seen.NEAR_PART, Set.of(), List.of("hold"), 0))
                        .magnitude())
                .isEmpty();
    }

    @Test
    void pastTheLeadInWithNothingSeenStopsByItself() {
        NeedleInside past = geometry(30, 60, 31, 20, 45);
        assertThat(SEARCH.next(inside(Seen.NOTHING, List.of("hold"), false, past))
                        .signs())
                .containsExactly(StopSign.PAST_LEAD_IN);
        assertThat(SEARCH.next(inside(Seen.NOTHING, List.of("hold"), true, past))
                        .step())
                .contains("slide");
        assertThat(SEARCH.next(inside(Seen.NEAR_PART, List.of("hold"), false, past))
                        .step())
                .contains("rotate");
    }

    @Test
    void deeperThanIntendedComesBackFirst() {
        assertThat(SEARCH.next(inside(Seen.NEAR_PART, List.of("hold"), false, geometry(10, 60, 61, 20, 45)))
                        .step())
                .contains("tooDeep");
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> SEARCH.next(ask(Seen.NO_DOT, Set.of(), List.of(), 0)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("nearPart");
        assertThatThrownBy(() -> SEARCH.next(ask(Seen.NOTHING, Set.of(), List.of("pray"), 0)))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> SEARCH.next(ask(Seen.NOTHING, Set.of(), List.of(), -1)))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> geometry(-1, 60, 30, 20, 45)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> geometry(10, 60, 30, 20, 91)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> geometry(10, 60, Double.NaN, 20, 45)).isInstanceOf(Refusal.class);
    }

    @Test
    void noFileCanTakeAwayASignOrSetTheWordsForBlood() {
        Map<StopSign, SightStep.Says> missing = stops();
        missing.remove(StopSign.NO_SPREAD);
        assertThatThrownBy(() -> rules(SMALL_IN_PLANE, missing, 3)).hasMessageContaining("noSpreadSeen");
        Map<StopSign, SightStep.Says> replaced = stops();
        replaced.put(StopSign.BLOOD, new SightStep.Says("Advance.", "Why not.", List.of()));
        assertThatThrownBy(() -> rules(SMALL_IN_PLANE, replaced, 3)).hasMessageContaining("fixed");
    }

    @Test
    void aLadderBeginsByHoldingAndEndsByWithdrawing() {
        assertThatThrownBy(() -> inPlane(withdraw(IN_PLANE))).hasMessageContaining("hold");
        assertThatThrownBy(() -> inPlane(hold(IN_PLANE))).hasMessageContaining("end the pass");
        assertThatThrownBy(() -> inPlane(hold(IN_PLANE), withdraw(List.of(Seen.NOTHING))))
                .hasMessageContaining("end the pass");
        assertThatThrownBy(() -> inPlane(hold(IN_PLANE), hold(IN_PLANE), withdraw(IN_PLANE)))
                .hasMessageContaining("Two steps");
        assertThatThrownBy(() -> inPlane(hold(List.of(Seen.NO_DOT)))).hasMessageContaining("noDot");
    }

    @Test
    void rulesNeedBothLaddersAndSensibleNumbers() {
        assertThatThrownBy(() -> new SightRules(List.of(SMALL_IN_PLANE), stops(), 3, BigDecimal.ONE, SAYS))
                .hasMessageContaining("outOfPlane");
        assertThatThrownBy(() -> rules(SMALL_IN_PLANE, stops(), 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() ->
                        new SightRules(List.of(SMALL_IN_PLANE, SMALL_OUT_OF_PLANE), stops(), 3, BigDecimal.ZERO, SAYS))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
