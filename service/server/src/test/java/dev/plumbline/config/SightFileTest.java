// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.plan.Approach;
import dev.plumbline.problem.Problem;
import dev.plumbline.sight.Advice;
import dev.plumbline.sight.NeedleInside;
import dev.plumbline.sight.NeedleUse;
import dev.plumbline.sight.Seen;
import dev.plumbline.sight.SightQuestion;
import dev.plumbline.sight.SightRules;
import dev.plumbline.sight.SightSearch;
import dev.plumbline.sight.SightStep;
import dev.plumbline.sight.StopSign;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The ladders that ship, over every state that can be reached. */
class SightFileTest {
    private static final SightRules RULES = SightFile.shipped();
    private static final SightSearch SEARCH = new SightSearch(RULES);
    private static final NeedleInside DEEP = new NeedleInside(
            OptionalDouble.of(20),
            OptionalDouble.of(50),
            OptionalDouble.of(55),
            OptionalDouble.of(15),
            OptionalDouble.of(40),
            OptionalDouble.of(1));

    /** A state of a search, as far as it decides the answer. */
    private record State(Seen seen, List<String> tried, int passes, boolean tooDeep) {}

    private static SightQuestion question(Approach approach, State state, Set<StopSign> signs, NeedleInside inside) {
        return new SightQuestion(
                approach, state.seen(), signs, state.tried(), state.passes(), true, state.tooDeep(), inside);
    }

    @Test
    void shippedFileConformsToItsSchema() throws IOException {
        assertThat(SiteFiles.complaints("sight-ladder.schema.json", SiteFiles.shipped(SightFile.NAME)))
                .isEmpty();
    }

    /**
     * Every state that the ladder itself leads to, whatever is seen after each step: walked from the start until nothing
     * new is found. What was tried is compared as a bag, so the walk ends.
     */
    @ParameterizedTest
    @EnumSource(Approach.class)
    void everyReachableStateHasAnAnswer(Approach approach) {
        Set<State> found = new HashSet<>();
        Deque<State> open = new ArrayDeque<>();
        for (Seen seen : Seen.all(approach)) {
            for (boolean tooDeep : new boolean[] {false, true}) {
                open.add(new State(seen, List.of(), 0, tooDeep));
            }
        }
        Set<Advice.Kind> kinds = EnumSet.noneOf(Advice.Kind.class);
        Set<String> steps = new HashSet<>();
        while (!open.isEmpty()) {
            State state = open.remove();
            if (!found.add(state)) {
                continue;
            }
            Advice advice = SEARCH.next(question(approach, state, Set.of(), NeedleInside.UNKNOWN));
            kinds.add(advice.kind());
            advice.step().ifPresent(steps::add);
            assertThat(advice.says().action()).isNotBlank();
            assertThat(advice.says().reason()).isNotBlank();
            open.addAll(after(approach, state, advice));
        }
        assertThat(found).hasSizeGreaterThan(200);
        assertThat(kinds)
                .containsExactlyInAnyOrder(
                        Advice.Kind.CARRY_ON, Advice.Kind.STEP, Advice.Kind.NEW_PASS, Advice.Kind.GIVE_UP);
        assertThat(steps)
                .as("every rung is reached")
                .containsExactlyInAnyOrderElementsOf(RULES.ladder(approach).steps().stream()
                        .map(SightStep::id)
                        .toList());
    }

    private static List<State> after(Approach approach, State state, Advice advice) {
        List<State> next = new ArrayList<>();
        if (advice.kind() == Advice.Kind.STEP) {
            List<String> tried = new ArrayList<>(state.tried());
            tried.add(advice.step().orElseThrow());
            tried.sort(String::compareTo);
            for (Seen seen : Seen.all(approach)) {
                next.add(new State(seen, List.copyOf(tried), state.passes(), state.tooDeep()));
                next.add(new State(seen, List.copyOf(tried), state.passes(), false));
            }
        } else if (advice.kind() == Advice.Kind.NEW_PASS) {
            for (Seen seen : Seen.all(approach)) {
                next.add(new State(seen, List.of(), state.passes() + 1, false));
            }
        }
        return next;
    }

    /** Every set of signs over everything seen, everything tried or nothing, every count of passes: 512 sets each. */
    @ParameterizedTest
    @EnumSource(Approach.class)
    void noStateAndNoHistoryGetsPastASign(Approach approach) {
        List<String> all =
                RULES.ladder(approach).steps().stream().map(SightStep::id).toList();
        StopSign[] everySign = StopSign.values();
        for (int bits = 1; bits < 1 << everySign.length; bits++) {
            Set<StopSign> signs = EnumSet.noneOf(StopSign.class);
            for (int bit = 0; bit < everySign.length; bit++) {
                if ((bits >> bit & 1) == 1) {
                    signs.add(everySign[bit]);
                }
            }
            for (Seen seen : Seen.all(approach)) {
                for (List<String> tried : List.of(List.<String>of(), List.of("hold"), all)) {
                    for (int passes = 0; passes <= 4; passes += 2) {
                        Advice advice =
                                SEARCH.next(question(approach, new State(seen, tried, passes, true), signs, DEEP));
                        assertStops(advice, signs);
                    }
                }
            }
        }
    }

    private static void assertStops(Advice advice, Set<StopSign> signs) {
        boolean treat = signs.contains(StopSign.BLOOD) || signs.contains(StopSign.TOXICITY);
        assertThat(advice.kind()).isEqualTo(treat ? Advice.Kind.TREAT : Advice.Kind.STOP);
        assertThat(advice.signs()).containsExactlyInAnyOrderElementsOf(signs);
        assertThat(advice.step()).isEmpty();
        assertThat(advice.hands()).isEmpty();
        assertThat(advice.magnitude()).isEmpty();
        if (treat) {
            assertThat(advice.says().action()).isEqualTo(SightRules.TREAT);
        } else {
            assertThat(advice.says().action()).startsWith("Stop");
        }
    }

    @Test
    void noStepForAnUnseenNeedleAdvancesIt() {
        assertThat(NeedleUse.values()).extracting(NeedleUse::word).noneMatch(word -> word.contains("advance"));
        RULES.ladders().stream()
                .flatMap(ladder -> ladder.steps().stream())
                .forEach(step -> assertThat(step.says().action().toLowerCase(Locale.ROOT))
                        .doesNotContain("advance"));
    }

    /** A client may print them below "Do not"; a thing to be done there would say its opposite. */
    @Test
    void whatMustNotBeDoneIsSaidAsAProhibition() throws IOException {
        List<String> mustNot = new ArrayList<>();
        SiteFiles.shipped(SightFile.NAME)
                .findValues("mustNot")
                .forEach(texts -> texts.forEach(text -> mustNot.add(text.asText())));
        assertThat(mustNot).hasSizeGreaterThan(30).allMatch(text -> text.matches("(Do not|No (second|further)) .*\\."));
    }

    @Test
    void noTextNamesADirection() throws IOException {
        String text = SiteFiles.shipped(SightFile.NAME).toString().toLowerCase(Locale.ROOT);
        assertThat(text)
                .doesNotContainPattern("\\b(left|right|clockwise|anticlockwise|counterclockwise|medial|lateral|cranial|"
                        + "caudal)\\b(?! image| angle)");
    }

    @Test
    void givesTheBoundOfTheRotationAndSaysANudgeEachWay() {
        SightQuestion question = new SightQuestion(
                Approach.IN_PLANE,
                Seen.NEAR_PART,
                Set.of(),
                List.of("hold", "withdrawTooDeep", "image", "fromAbove"),
                0,
                false,
                false,
                DEEP);
        Advice advice = SEARCH.next(question);
        assertThat(advice.step()).contains("rotateFar");
        assertThat(advice.says().action()).contains("one way, then the other");
        // asin(1 / (2 * 15 cos 40)) = 2.4939 degrees.
        assertThat(advice.magnitude().orElseThrow().value()).isEqualByComparingTo("2.5");
    }

    @Test
    void aLadderThatForgetsAStateIsRefusedWithItsPlace() throws IOException {
        Problem problem = SiteFiles.problem(SightFile.NAME, SightFile::read, tree -> {
            JsonNode steps = tree.withArray("ladders").get(0).get("steps");
            ArrayNode when = ((ObjectNode) steps.get(steps.size() - 1)).withArray("when");
            assertThat(when.remove(3).textValue()).isEqualTo("farPart");
        });
        assertThat(problem.pointer()).isEqualTo("/ladders/0");
        assertThat(problem.detail()).contains("farPart");
    }

    @Test
    void theWordsForBloodCannotBeSet() throws IOException {
        Problem problem = SiteFiles.problem(
                SightFile.NAME,
                SightFile::read,
                tree -> ((ObjectNode) tree.get("stops"))
                        .set("blood", tree.get("giveUp").deepCopy()));
        assertThat(problem.detail()).contains("fixed");
    }

    @Test
    void anInventedUseOfTheNeedleIsRefused() throws IOException {
        Problem problem = SiteFiles.problem(
                SightFile.NAME,
                SightFile::read,
                tree -> ((ObjectNode)
                                tree.withArray("ladders").get(0).get("steps").get(0))
                        .put("needle", "advanced"));
        assertThat(problem.pointer()).isEqualTo("/ladders/0/steps/0/needle");
        assertThat(SiteFiles.problem(SightFile.NAME, SightFile::read, tree -> tree.put("passlimit", 3)))
                .extracting(Problem::pointer, Problem::remedy)
                .containsExactly("/passlimit", "Did you mean \"passLimit\"?");
    }
}
