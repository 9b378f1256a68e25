// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import static dev.plumbline.procedure.Events.aliquot;
import static dev.plumbline.procedure.Events.out;
import static dev.plumbline.procedure.Events.puncture;
import static dev.plumbline.procedure.Events.sight;
import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.geometry.Reason;
import dev.plumbline.sight.Seen;
import java.time.Duration;
import org.junit.jupiter.api.Test;

class DerivedTest {
    private static final Elapsed UNKNOWN = new Elapsed.Unknown(Reason.NOT_LOGGED_LIVE);

    private static Elapsed seconds(long seconds) {
        return new Elapsed.Known(Duration.ofSeconds(seconds));
    }

    @Test
    void countsPassesRedirectionsAndVolume() {
        Derived derived = Derived.of(new Events()
                .add(0, puncture())
                .add(10, new Happening.Redirection())
                .add(20, new Happening.Pass())
                .add(30, aliquot("2.5"))
                .add(40, aliquot("2.5"))
                .add(50, out())
                .log());
        assertThat(derived.passes()).isEqualTo(2);
        assertThat(derived.redirections()).isEqualTo(1);
        assertThat(derived.injected().ml()).isEqualByComparingTo("5");
    }

    @Test
    void timeUnderSkinAddsUpAllPunctures() {
        Derived derived = Derived.of(new Events()
                .add(0, puncture())
                .add(60, out())
                .add(100, puncture())
                .add(130, out())
                .log());
        assertThat(derived.underSkin()).isEqualTo(seconds(90));
    }

    @Test
    void anEndEnteredLaterGivesNoTime() {
        assertThat(Derived.of(new Events()
                                .add(0, puncture())
                                .addLater(60, out())
                                .log())
                        .underSkin())
                .isEqualTo(UNKNOWN);
        assertThat(Derived.of(new Events()
                                .addLater(0, puncture())
                                .add(60, out())
                                .log())
                        .underSkin())
                .isEqualTo(UNKNOWN);
    }

    @Test
    void aMissingEndGivesNoTime() {
        assertThat(Derived.of(new Events().add(0, puncture()).log()).underSkin())
                .isEqualTo(UNKNOWN);
        assertThat(Derived.of(new Events().add(0, out()).log()).underSkin()).isEqualTo(UNKNOWN);
        assertThat(Derived.of(new Events()
                                .add(0, puncture())
                                .add(10, puncture())
                                .add(20, out())
                                .log())
                        .underSkin())
                .isEqualTo(UNKNOWN);
        assertThat(Derived.of(ProcedureLog.EMPTY).underSkin()).isEqualTo(UNKNOWN);
    }

    @Test
    void timeWithTheTipUnseenRunsFromNoteToNote() {
        Derived derived = Derived.of(new Events()
                .add(0, puncture())
                .add(5, sight(Seen.NOTHING))
                .add(15, sight(Seen.NEAR_PART))
                .add(25, sight(Seen.SHAFT_AND_TIP))
                .add(50, sight(Seen.SHAFT_NO_TIP))
                .add(60, out())
                .log());
        assertThat(derived.tipUnseen()).isEqualTo(seconds(30));
    }

    @Test
    void aTipSeenAllTheWayWasUnseenForNoTime() {
        assertThat(Derived.of(new Events()
                                .add(0, puncture())
                                .add(1, sight(Seen.SHAFT_AND_TIP))
                                .add(60, out())
                                .log())
                        .tipUnseen())
                .isEqualTo(seconds(0));
    }

    @Test
    void withoutANoteNobodyKnowsHowLongTheTipWasUnseen() {
        assertThat(Derived.of(new Events().add(0, puncture()).add(60, out()).log())
                        .tipUnseen())
                .isEqualTo(UNKNOWN);
        assertThat(Derived.of(new Events()
                                .add(0, puncture())
                                .addLater(5, sight(Seen.NOTHING))
                                .add(60, sight(Seen.SHAFT_AND_TIP))
                                .log())
                        .tipUnseen())
                .isEqualTo(UNKNOWN);
    }
}
