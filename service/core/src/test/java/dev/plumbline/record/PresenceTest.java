// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.agents.Patient;
import dev.plumbline.agents.Stage;
import dev.plumbline.agents.Volume;
import dev.plumbline.agents.Weight;
import dev.plumbline.needle.Needle;
import dev.plumbline.procedure.Events;
import dev.plumbline.procedure.Happening;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.procedure.ProcedureContext;
import dev.plumbline.procedure.SetUpChecks;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PresenceTest {
    private final Cases cases = new Cases();

    private Set<String> present(Events events) {
        cases.events = events.log().events();
        return Presence.of(cases.document(), false);
    }

    private static Surroundings around(ProcedureContext said, boolean nothingGiven) {
        return new Surroundings(
                said,
                Patient.UNKNOWN,
                Optional.empty(),
                Optional.empty(),
                Surroundings.OtherToday.NOT_ASKED,
                nothingGiven,
                Optional.empty(),
                Optional.empty());
    }

    @Test
    void anEmptyCaseHoldsNothing() {
        assertThat(present(new Events())).isEmpty();
    }

    @Test
    void injectingWithAspirationSpreadAndPainIsSeenInTheLog() {
        assertThat(present(new Events()
                        .add(0, Events.stop(Laterality.RIGHT))
                        .add(10, Events.puncture())
                        .add(20, new Happening.Aspiration(false))
                        .add(30, Events.aliquot("5"))
                        .add(90, new Happening.LookedForComplications("Doe^Jo"))))
                .containsExactlyInAnyOrder(
                        "consent", "stopMoment", "aspirationAndSpread", "pain", "resistance", "time", "complications");
    }

    @Test
    void anInjectionOfWhichNothingWasSaidAnswersNothing() {
        Happening silent = new Happening.Aliquot(
                Volume.ofMl("5"),
                Optional.of("saline"),
                Optional.empty(),
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        assertThat(present(new Events().add(0, new Happening.Aspiration(false)).add(10, silent)))
                .containsExactly("time");
    }

    @Test
    void aSecondPunctureSiteNeedsAStopMomentOfItsOwn() {
        assertThat(present(new Events()
                        .add(0, Events.stop(Laterality.RIGHT))
                        .add(10, Events.puncture())
                        .add(20, new Happening.Puncture(2))))
                .doesNotContain("stopMoment");
    }

    @Test
    void nothingGivenAnswersWhatAnInjectionWould() {
        cases.around = around(ProcedureContext.NOTHING_STATED, true);
        assertThat(present(new Events()))
                .containsExactlyInAnyOrder("agents", "aspirationAndSpread", "pain", "resistance");
        assertThat(present(new Events().add(0, Events.aliquot("1"))))
                .as("the log contradicts it")
                .doesNotContain("agents", "aspirationAndSpread");
    }

    @Test
    void anAgentIsThereOnceItsVolumeGivenIsEnteredOrLogged() {
        cases.agents = List.of(Cases.agent("a-1", Map.of(Stage.DRAWN_UP, Volume.ofMl("20"))));
        assertThat(present(new Events())).doesNotContain("agents");
        assertThat(present(new Events().add(0, Events.aliquot("5")))).contains("agents");
        cases.agents = List.of(Cases.agent("a-1", Map.of(Stage.GIVEN, Volume.ofMl("20"))));
        assertThat(present(new Events())).contains("agents");
    }

    @Test
    void aNeedleIsGaugeAndLength() {
        cases.context =
                new Context(Optional.of("axillaryBrachialPlexus"), Optional.of(Laterality.RIGHT), Optional.empty());
        cases.needle = new Needle(OptionalInt.of(22), OptionalDouble.empty(), Optional.empty());
        assertThat(Presence.of(cases.document(), true)).containsExactlyInAnyOrder("patient", "block", "side");
        cases.needle = new Needle(OptionalInt.of(22), OptionalDouble.of(50), Optional.empty());
        assertThat(Presence.of(cases.document(), true)).contains("needle");
    }

    @Test
    void everySurroundingThatIsSaidIsPresent() {
        ProcedureContext said = new ProcedureContext(
                Optional.of("hand surgery"),
                Set.of(ProcedureContext.Localisation.ULTRASOUND),
                Optional.of(ProcedureContext.PatientState.AWAKE),
                Optional.of("supine"),
                Optional.of(ProcedureContext.Allergies.NONE),
                Optional.empty(),
                Optional.of(ProcedureContext.Coagulation.NO_CONCERN),
                Optional.of(ProcedureContext.Neurology.NORMAL),
                Optional.of("chlorhexidine"),
                Optional.of("left hand"),
                Optional.of("ECG, pulse oximetry"),
                List.of("L-1"));
        cases.around = new Surroundings(
                said,
                new Patient(
                        Optional.of(new Weight(BigDecimal.valueOf(70), Weight.Source.MEASURED)),
                        Optional.empty(),
                        Optional.empty(),
                        OptionalInt.empty()),
                Optional.of(BigDecimal.valueOf(175)),
                Optional.of(new SetUpChecks.Answered(
                        "consent", SetUpChecks.Answer.DONE, Optional.empty(), "Doe^Jo", Events.TEN)),
                Surroundings.OtherToday.NOT_ASKED,
                false,
                Optional.empty(),
                Optional.empty());
        assertThat(present(new Events()))
                .containsExactlyInAnyOrder(
                        "consent",
                        "weight",
                        "height",
                        "indication",
                        "localisation",
                        "patientState",
                        "position",
                        "allergies",
                        "coagulation",
                        "baselineNeurology",
                        "skinPreparation",
                        "ivAccess",
                        "monitoring",
                        "lots");
    }
}
