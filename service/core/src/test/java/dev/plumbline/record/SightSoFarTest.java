// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.plan.Approach;
import dev.plumbline.procedure.Events;
import dev.plumbline.procedure.Happening;
import dev.plumbline.sight.NeedleInside;
import dev.plumbline.sight.Seen;
import dev.plumbline.sight.SightQuestion;
import dev.plumbline.sight.StopSign;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SightSoFarTest {
    private static SightQuestion question(Events events) {
        return SightSoFar.question(events.log(), Approach.IN_PLANE, NeedleInside.UNKNOWN);
    }

    private static Happening step(Seen seen, String step) {
        return new Happening.Sight(seen, Optional.of(step));
    }

    private static Happening halt(StopSign sign) {
        return new Happening.Halt(Optional.of(sign), Optional.empty());
    }

    @Test
    void withoutANoteNobodyIsSure() {
        assertThat(question(new Events()).seen()).isEqualTo(Seen.NOT_SURE);
    }

    @Test
    void theStepsOfThisPassAreTriedAndPassesWithoutTheTipAreCounted() {
        SightQuestion asked = question(new Events()
                .add(0, Events.puncture())
                .add(5, step(Seen.NOTHING, "hold"))
                .add(9, new Happening.Pass())
                .add(12, step(Seen.NEAR_PART, "hold"))
                .add(15, step(Seen.NEAR_PART, "image")));
        assertThat(asked.passesUnseen()).isEqualTo(1);
        assertThat(asked.tried()).containsExactly("hold", "image");
        assertThat(asked.seen()).isEqualTo(Seen.NEAR_PART);
    }

    @Test
    void aPassInWhichTheTipWasSeenIsNotCounted() {
        assertThat(question(new Events()
                                .add(0, Events.puncture())
                                .add(5, Events.sight(Seen.SHAFT_AND_TIP))
                                .add(9, new Happening.Pass()))
                        .passesUnseen())
                .isZero();
    }

    @Test
    void signsStayUntilSomethingIsChangedAndBloodStays() {
        Events stopped = new Events()
                .add(0, Events.puncture())
                .add(2, halt(StopSign.FIRM_RESISTANCE))
                .add(4, new Happening.Aspiration(true));
        assertThat(question(stopped).signs()).containsExactlyInAnyOrder(StopSign.FIRM_RESISTANCE, StopSign.BLOOD);
        assertThat(question(stopped.add(6, new Happening.Redirection())).signs())
                .containsExactly(StopSign.BLOOD);
    }
}
