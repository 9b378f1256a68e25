// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.geometry.Foundation;
import dev.plumbline.geometry.Standing;
import dev.plumbline.problem.Refusal;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class AmountsTest {
    private static final Drug HALF_TO_TEN = new Drug(
            "any",
            true,
            Optional.of(new Drug.Usual(
                    new BigDecimal("1.25"), BigDecimal.TEN, new Foundation(Standing.CHOSEN, "made up for this test"))));
    private static final Agent LIDOCAINE = new Agent(
            "lidocaine",
            Basis.SALT,
            Concentration.percent("1"),
            List.of(new Agent.Additive(Agent.EPINEPHRINE, Basis.BASE, Concentration.microgramsPerMl("5"))));

    @Test
    void decimalsAreExact() {
        assertThat(Volume.ofMl("0.1").plus(Volume.ofMl("0.2"))).isEqualTo(Volume.ofMl("0.3"));
        assertThat(Mass.in(Volume.ofMl("0.3"), Concentration.percent("0.1")).mg())
                .isEqualByComparingTo("0.3");
    }

    @Test
    void howAnAmountIsWrittenDoesNotMatter() {
        assertThat(Volume.ofMl("10.0")).isEqualTo(Volume.ofMl("10"));
        assertThat(Mass.ofMg("0.00")).isEqualTo(Mass.NONE);
        assertThat(Concentration.percent("0.50")).isEqualTo(Concentration.mgPerMl("5.0"));
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> Volume.ofMl("-1")).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> Volume.ofMl("501")).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> Mass.ofMg("-0.1")).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> Concentration.percent("101")).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> Concentration.percent("0")).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> Concentration.mgPerMl("1001")).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> Concentration.oneIn(0)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> Mixture.of(List.of())).isInstanceOf(Refusal.class);
    }

    /** Sums of 1e-999999999 would fill the memory. */
    @Test
    void numbersWithAbsurdlyManyDigitsAreRefused() {
        for (String number : List.of("1e999999999", "1e-999999999", "0." + "0".repeat(300) + "1", "-1e999999999")) {
            assertThatThrownBy(() -> Volume.ofMl(number)).isInstanceOf(Refusal.class);
            assertThatThrownBy(() -> Mass.ofMg(number)).isInstanceOf(Refusal.class);
            assertThatThrownBy(() -> Concentration.mgPerMl(number)).isInstanceOf(Refusal.class);
            assertThatThrownBy(() -> Concentration.percent(number)).isInstanceOf(Refusal.class);
            assertThatThrownBy(() -> weight(number)).isInstanceOf(Refusal.class);
        }
    }

    @Test
    void percentAndMicrogramsReadBack() {
        assertThat(Concentration.mgPerMl("7.5").percent()).isEqualByComparingTo("0.75");
        assertThat(Concentration.mgPerMl("0.005").microgramsPerMl()).isEqualByComparingTo("5");
        assertThat(Mass.ofMg("0.1").micrograms()).isEqualByComparingTo("100");
    }

    @Test
    void additivesComeAlongInMicrograms() {
        Mixture mixture = Mixture.of(List.of(new Mixture.Portion(LIDOCAINE, Volume.ofMl("20"))));
        assertThat(mixture.content(Agent.EPINEPHRINE).orElseThrow().mass().micrograms())
                .isEqualByComparingTo("100");
        assertThat(LIDOCAINE.hasEpinephrine()).isTrue();
    }

    @Test
    void aPartOfAMixtureHoldsItsShareToTheLastDigit() {
        Mixture mixture = Mixture.of(List.of(
                new Mixture.Portion(LIDOCAINE, Volume.ofMl("10")),
                new Mixture.Portion(
                        new Agent("sodiumChloride", Basis.SALT, Concentration.mgPerMl("9"), List.of()),
                        Volume.ofMl("20"))));
        Mixture.Content lidocaine = mixture.content("lidocaine").orElseThrow();
        assertThat(mixture.massIn(lidocaine, Volume.ofMl("15"))).isEqualTo(Mass.ofMg("50"));
        assertThat(mixture.massIn(lidocaine, Volume.ofMl("30"))).isEqualTo(Mass.ofMg("100"));
        assertThatThrownBy(() -> mixture.massIn(lidocaine, Volume.ofMl("31"))).isInstanceOf(Refusal.class);
    }

    @Test
    void theSameDrugAsSaltAndAsBaseIsNeverAddedUp() {
        Agent asBase = new Agent("lidocaine", Basis.BASE, Concentration.percent("1"), List.of());
        Mixture mixture = Mixture.of(List.of(
                new Mixture.Portion(LIDOCAINE, Volume.ofMl("1")), new Mixture.Portion(asBase, Volume.ofMl("1"))));
        assertThat(mixture.contents())
                .extracting(Mixture.Content::drug)
                .containsExactly("lidocaine", "epinephrine", "lidocaine");
    }

    @Test
    void aConcentrationTenTimesOffIsQuestioned() {
        assertThat(HALF_TO_TEN.doubt(Concentration.mgPerMl("0.5"))).contains(Drug.Doubt.MAY_BE_PERCENT);
        assertThat(HALF_TO_TEN.doubt(Concentration.percent("5"))).contains(Drug.Doubt.MAY_BE_MG_PER_ML);
        assertThat(HALF_TO_TEN.doubt(Concentration.percent("0.5"))).isEmpty();
        assertThat(HALF_TO_TEN.doubt(Concentration.mgPerMl("500"))).contains(Drug.Doubt.UNUSUAL);
    }

    @Test
    void anUnknownDrugIsRefused() {
        DrugList list = new DrugList(List.of(HALF_TO_TEN));
        assertThat(list.drug("any")).isEqualTo(HALF_TO_TEN);
        assertThatThrownBy(() -> list.drug("many")).isInstanceOf(Refusal.class).hasMessageContaining("one of any");
        assertThatThrownBy(() -> new DrugList(List.of(HALF_TO_TEN, HALF_TO_TEN)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void noMoreIsUsedThanWasDrawnUp() {
        assertThatThrownBy(() -> use(Map.of(
                        Stage.DRAWN_UP, Volume.ofMl("20"),
                        Stage.GIVEN, Volume.ofMl("15"),
                        Stage.DISCARDED, Volume.ofMl("6"))))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("21 mL");
        assertThat(use(Map.of(Stage.GIVEN, Volume.ofMl("15"))).mass(Stage.GIVEN))
                .contains(Mass.ofMg("150"));
        assertThat(use(Map.of()).mass(Stage.GIVEN)).as("not entered is not 0").isEmpty();
    }

    private static AgentUse use(Map<Stage, Volume> volumes) {
        return new AgentUse("a-1", LIDOCAINE, Dose.Purpose.BLOCK, Route.PERINEURAL, Optional.empty(), volumes);
    }

    @Test
    void weightsThatAreSlipsAreQuestioned() {
        Weight seventy = new Weight(BigDecimal.valueOf(70), Weight.Source.MEASURED);
        BigDecimal height = BigDecimal.valueOf(170);
        assertThat(seventy.doubtBesideHeight(height)).isEmpty();
        assertThat(weight("7").doubtBesideHeight(height)).contains(Weight.Doubt.MAY_BE_TEN_FOLD_TOO_LOW);
        assertThat(weight("500").doubtBesideHeight(height)).contains(Weight.Doubt.MAY_BE_TEN_FOLD_TOO_HIGH);
        assertThat(weight("154").doubtBeside(seventy)).contains(Weight.Doubt.MAY_BE_POUNDS);
        assertThat(weight("75").doubtBeside(seventy)).isEmpty();
        assertThat(weight("1").doubtBeside(seventy)).contains(Weight.Doubt.DOES_NOT_FIT);
    }

    private static Weight weight(String kg) {
        return new Weight(new BigDecimal(kg), Weight.Source.REPORTED);
    }

    @Test
    void weightsThatNoPatientHasAreRefused() {
        assertThatThrownBy(() -> weight("0.2")).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> weight("700")).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> weight("-70")).isInstanceOf(Refusal.class);
    }
}
