// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.geometry.Foundation;
import dev.plumbline.geometry.Standing;
import dev.plumbline.problem.Refusal;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ChecksAndCompletenessTest {
    private static final Foundation MADE_UP = new Foundation(Standing.CHOSEN, "made up for this test");
    private static final SetUpChecks CHECKS = new SetUpChecks(
            List.of(
                    new SetUpChecks.Check("air", Optional.empty(), "No air."),
                    new SetUpChecks.Check("height", Optional.empty(), "Height.")),
            Duration.ofMinutes(5));
    private static final Completeness LIST = new Completeness(List.of(
            new Completeness.Item("needle", "Needle", true, Completeness.Agreement.STRONG, MADE_UP),
            new Completeness.Item("weight", "Weight", false, Completeness.Agreement.STRONG, MADE_UP)));

    private static SetUpChecks.Answered answer(String id, SetUpChecks.Answer answer, Optional<String> reason) {
        return new SetUpChecks.Answered(id, answer, reason, "Roe^Al", Events.TEN);
    }

    @Test
    void whatNobodyAnsweredIsNotRecorded() {
        assertThat(CHECKS.lines(List.of(answer("air", SetUpChecks.Answer.DONE, Optional.empty()))))
                .extracting(SetUpChecks.Line::word)
                .containsExactly("done", "notRecorded");
    }

    @Test
    void theLastAnswerCounts() {
        assertThat(CHECKS.lines(List.of(
                                answer("air", SetUpChecks.Answer.DONE, Optional.empty()),
                                answer("air", SetUpChecks.Answer.NOT_DONE, Optional.of("line changed"))))
                        .get(0)
                        .word())
                .isEqualTo("notDone");
    }

    @Test
    void anOmissionNeedsItsReason() {
        assertThatThrownBy(() -> answer("air", SetUpChecks.Answer.NOT_DONE, Optional.empty()))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> answer("air", SetUpChecks.Answer.NOT_DONE, Optional.of(" ")))
                .isInstanceOf(Refusal.class);
        assertThat(answer("air", SetUpChecks.Answer.NOT_APPLICABLE, Optional.empty())
                        .reason())
                .isEmpty();
    }

    @Test
    void thereIsNoAnswerToAllAtOnce() {
        assertThatThrownBy(() -> CHECKS.lines(List.of(answer("all", SetUpChecks.Answer.DONE, Optional.empty()))))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("air, height");
        assertThatThrownBy(() -> new SetUpChecks(CHECKS.checks(), Duration.ZERO))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void onlyARequiredItemWithoutReasonKeepsFromSigning() {
        assertThat(LIST.signable(Set.of("needle"), Map.of())).isTrue();
        assertThat(LIST.signable(Set.of("weight"), Map.of())).isFalse();
        assertThat(LIST.signable(Set.of("weight"), Map.of("needle", "package thrown away")))
                .isTrue();
        assertThat(LIST.signable(Set.of("weight"), Map.of("needle", " "))).isFalse();
    }

    @Test
    void everythingMissingIsListed() {
        assertThat(LIST.missing(Set.of(), Map.of("needle", "package thrown away")))
                .extracting(missing -> missing.item().id(), Completeness.Missing::blocks)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("needle", false),
                        org.assertj.core.groups.Tuple.tuple("weight", false));
    }

    @Test
    void noSiteCanRequireMore() {
        assertThatThrownBy(() -> new Completeness(List.of(
                        new Completeness.Item("weight", "Weight", true, Completeness.Agreement.STRONG, MADE_UP))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("weight");
    }

    @Test
    void aSideThatIsSaidDifferentlyStaysOpenUntilAnswered() {
        Optional<Laterality> left = Optional.of(Laterality.LEFT);
        Optional<Laterality> right = Optional.of(Laterality.RIGHT);
        assertThat(new SideCheck(left, left, Optional.empty(), Optional.empty()).open())
                .isFalse();
        assertThat(new SideCheck(left, right, Optional.empty(), Optional.empty()).open())
                .isTrue();
        assertThat(new SideCheck(Optional.empty(), right, left, Optional.of(" ")).open())
                .isTrue();
        SideCheck answered = new SideCheck(left, right, right, Optional.of("order was wrong, patient asked"));
        assertThat(answered.open()).isFalse();
        assertThat(answered.disagrees()).isTrue();
        assertThat(answered.said()).containsEntry("order", Laterality.LEFT).containsEntry("case", Laterality.RIGHT);
    }
}
