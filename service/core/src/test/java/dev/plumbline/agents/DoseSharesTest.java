// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class DoseSharesTest {
    private static final OffsetDateTime NOW = OffsetDateTime.parse("2026-01-05T10:15:00+01:00");
    private static final FormularyRow.Origin ORIGIN = new FormularyRow.Origin("XX", "made up for this test", "1");
    private static final Formulary.Approval.Approved APPROVED =
            new Formulary.Approval.Approved("Doe^Jo", LocalDate.of(2026, 1, 2));
    private static final Patient SEVENTY = patient("70");

    private static Patient patient(String kg) {
        return new Patient(
                Optional.of(new Weight(new BigDecimal(kg), Weight.Source.MEASURED)),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.of(40));
    }

    private static FormularyRow row(String drug, boolean vasoconstrictor, String mgPerKg, Optional<Mass> absolute) {
        return row(drug + vasoconstrictor, drug, vasoconstrictor, limit(mgPerKg, absolute, OptionalInt.empty()));
    }

    private static FormularyRow row(String id, String drug, boolean vasoconstrictor, FormularyRow.Limit limit) {
        return new FormularyRow(
                id,
                new FormularyRow.Use(drug, Basis.SALT, vasoconstrictor, Route.PERINEURAL, Optional.empty()),
                new FormularyRow.Ages(OptionalInt.of(18), OptionalInt.empty()),
                limit,
                ORIGIN);
    }

    private static FormularyRow.Limit limit(String mgPerKg, Optional<Mass> absolute, OptionalInt window) {
        return new FormularyRow.Limit(
                Optional.of(new BigDecimal(mgPerKg)), absolute, WeightBasis.ACTUAL, Optional.empty(), window);
    }

    private static final Formulary SITE = new Formulary(
            List.of(
                    row("lidocaine", true, "7", Optional.of(Mass.ofMg("500"))),
                    row("bupivacaine", false, "2", Optional.empty())),
            APPROVED);

    private static Dose dose(String drug, boolean vasoconstrictor, String mg, Dose.Purpose purpose) {
        return new Dose(
                drug,
                Basis.SALT,
                Mass.ofMg(mg),
                vasoconstrictor,
                Route.PERINEURAL,
                Optional.empty(),
                purpose,
                NOW.minusMinutes(10));
    }

    private static Dose block(String drug, boolean vasoconstrictor, String mg) {
        return dose(drug, vasoconstrictor, mg, Dose.Purpose.BLOCK);
    }

    private static DoseShares shares(Formulary formulary, Patient patient, Dose... doses) {
        return new DoseBudget(List.of(doses), OtherDoses.ASKED_NONE).shares(formulary, patient, NOW);
    }

    private static String six(BigDecimal value) {
        return value.setScale(6, RoundingMode.HALF_EVEN).toPlainString();
    }

    /** 200/490 + 50/140. */
    @Test
    void sharesOfTwoDrugsAddUp() {
        DoseShares shares = shares(SITE, SEVENTY, block("lidocaine", true, "200"), block("bupivacaine", false, "50"));
        assertThat(shares.parts())
                .extracting(part -> six(((DoseShares.Verdict.Share) part.verdict()).share()))
                .containsExactly("0.408163", "0.357143");
        assertThat(six(shares.total().orElseThrow())).isEqualTo("0.765306");
        assertThat(shares.exceeds()).isFalse();
    }

    /** 30 mL of 0.5 % at 70 kg: 150 mg, 2.142857 mg/kg, 107.14 % of 2 mg/kg. */
    @Test
    void thirtyMillilitresOfHalfPerCentExceedTwoMilligramsPerKilogram() {
        Dose dose = block(
                "bupivacaine",
                false,
                Mass.in(Volume.ofMl("30"), Concentration.percent("0.5")).mg().toPlainString());
        DoseBudget budget = new DoseBudget(List.of(dose), OtherDoses.ASKED_NONE);
        assertThat(six(budget.mgPerKg("bupivacaine", Basis.SALT, SEVENTY))).isEqualTo("2.142857");
        DoseShares shares = budget.shares(SITE, SEVENTY, NOW);
        assertThat(six(shares.total().orElseThrow())).isEqualTo("1.071429");
        assertThat(shares.reminds(Stage.PLANNED)).isTrue();
        assertThat(shares.reminds(Stage.DRAWN_UP)).isTrue();
        assertThat(shares.reminds(Stage.GIVEN)).isFalse();
    }

    @Test
    void exactlyTheLimitDoesNotExceedIt() {
        assertThat(shares(SITE, SEVENTY, block("bupivacaine", false, "140")).exceeds())
                .isFalse();
        assertThat(shares(SITE, SEVENTY, block("bupivacaine", false, "140.0001"))
                        .exceeds())
                .isTrue();
    }

    @Test
    void withoutAMatchingRowThereIsNoVerdictAndNoTotal() {
        DoseShares shares = shares(SITE, SEVENTY, block("lidocaine", true, "200"), block("ropivacaine", false, "50"));
        assertThat(shares.parts().get(1).verdict()).isEqualTo(new DoseShares.Verdict.None(DoseShares.Why.NO_ROW));
        assertThat(shares.total()).isEmpty();
    }

    @Test
    void aLimitForTheSaltOrWithoutVasoconstrictorIsNoneForTheOther() {
        Dose asBase = new Dose(
                "bupivacaine",
                Basis.BASE,
                Mass.ofMg("10"),
                false,
                Route.PERINEURAL,
                Optional.empty(),
                Dose.Purpose.BLOCK,
                NOW);
        assertThat(shares(SITE, SEVENTY, asBase).total()).isEmpty();
        assertThat(shares(SITE, SEVENTY, block("bupivacaine", true, "10")).total())
                .isEmpty();
    }

    @Test
    void anUnknownAgeFitsNoAgeBand() {
        Patient ageless = new Patient(SEVENTY.weight(), Optional.empty(), Optional.empty(), OptionalInt.empty());
        assertThat(shares(SITE, ageless, block("bupivacaine", false, "10")).total())
                .isEmpty();
        Patient child = new Patient(SEVENTY.weight(), Optional.empty(), Optional.empty(), OptionalInt.of(17));
        assertThat(shares(SITE, child, block("bupivacaine", false, "10")).total())
                .isEmpty();
    }

    @Test
    void withoutAWeightALimitPerKilogramGivesNoVerdict() {
        Patient weightless = new Patient(Optional.empty(), Optional.empty(), Optional.empty(), OptionalInt.of(40));
        assertThat(shares(SITE, weightless, block("bupivacaine", false, "10"))
                        .parts()
                        .get(0)
                        .verdict())
                .isEqualTo(new DoseShares.Verdict.None(DoseShares.Why.WEIGHT_MISSING));
        assertThatThrownBy(() ->
                        new DoseBudget(List.of(), OtherDoses.NOT_ASKED).mgPerKg("bupivacaine", Basis.SALT, weightless))
                .isInstanceOfSatisfying(
                        Refusal.class,
                        refusal -> assertThat(refusal.problem()).isInstanceOf(Problem.MissingField.class));
    }

    @Test
    void aFormularyNobodyApprovedGivesNoVerdict() {
        Formulary sample = new Formulary(SITE.rows(), new Formulary.Approval.Missing("it is an example"));
        DoseShares shares = shares(sample, SEVENTY, block("bupivacaine", false, "1000"));
        assertThat(shares.parts().get(0).verdict()).isEqualTo(new DoseShares.Verdict.None(DoseShares.Why.NOT_APPROVED));
        assertThat(shares.reminds(Stage.PLANNED)).isFalse();
        assertThat(sample.whyNotInForce()).contains("it is an example");
    }

    @Test
    void nobodyAndSampleApproveNothing() {
        LocalDate day = LocalDate.of(2026, 1, 2);
        for (String name : List.of("", " ", "sample", "Example", "TBD")) {
            assertThatThrownBy(() -> new Formulary.Approval.Approved(name, day))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void twoRowsThatBothFitGiveNoVerdict() {
        FormularyRow.Limit limit = limit("2", Optional.empty(), OptionalInt.empty());
        Formulary two = new Formulary(
                List.of(row("one", "bupivacaine", false, limit), row("two", "bupivacaine", false, limit)), APPROVED);
        assertThat(shares(two, SEVENTY, block("bupivacaine", false, "10"))
                        .parts()
                        .get(0)
                        .verdict())
                .isEqualTo(new DoseShares.Verdict.None(DoseShares.Why.SEVERAL_ROWS));
    }

    @Test
    void dosesOlderThanTheWindowOfTheirLimitDoNotCount() {
        Formulary fourHours = new Formulary(
                List.of(row("r", "bupivacaine", false, limit("2", Optional.empty(), OptionalInt.of(4)))), APPROVED);
        Dose now = block("bupivacaine", false, "70");
        DoseBudget budget = new DoseBudget(List.of(now), OtherDoses.ASKED_NONE);
        assertThat(budget.shares(fourHours, SEVENTY, now.at().plusHours(3)).total())
                .isPresent();
        assertThat(budget.shares(fourHours, SEVENTY, now.at().plusHours(4)).parts())
                .isEmpty();
    }

    @Test
    void aCapLimitsTheWeight() {
        FormularyRow.Limit capped = new FormularyRow.Limit(
                Optional.of(new BigDecimal("2")),
                Optional.empty(),
                WeightBasis.CAPPED,
                Optional.of(new BigDecimal("80")),
                OptionalInt.empty());
        assertThat(capped.of(patient("120"))).contains(Mass.ofMg("160"));
        assertThat(capped.of(patient("60"))).contains(Mass.ofMg("120"));
    }

    @Test
    void idealAndLeanWeightAreUsedOnlyWhenEntered() {
        FormularyRow.Limit ideal = new FormularyRow.Limit(
                Optional.of(new BigDecimal("2")),
                Optional.empty(),
                WeightBasis.IDEAL,
                Optional.empty(),
                OptionalInt.empty());
        assertThat(ideal.of(SEVENTY)).isEmpty();
        assertThat(ideal.of(new Patient(
                        SEVENTY.weight(), Optional.of(new BigDecimal("60")), Optional.empty(), OptionalInt.empty())))
                .contains(Mass.ofMg("120"));
    }

    @Test
    void everythingOfTheSessionCountsOnce() {
        DoseBudget budget = new DoseBudget(
                List.of(
                        block("lidocaine", true, "100"),
                        dose("lidocaine", true, "20", Dose.Purpose.SKIN_INFILTRATION),
                        dose("lidocaine", true, "10", Dose.Purpose.HYDROLOCATION),
                        dose("lidocaine", true, "70", Dose.Purpose.OTHER_TODAY)),
                OtherDoses.ASKED_GIVEN);
        assertThat(budget.totals()).containsEntry("lidocaine/salt", Mass.ofMg("200"));
        assertThat(six(budget.shares(SITE, SEVENTY, NOW).total().orElseThrow())).isEqualTo("0.408163");
    }

    @Test
    void otherDosesNobodyAskedForAreUnknownAndSaidSo() {
        DoseShares unasked = new DoseBudget(List.of(block("lidocaine", true, "100")), OtherDoses.NOT_ASKED)
                .shares(SITE, SEVENTY, NOW);
        assertThat(unasked.cautions())
                .containsExactly("A share below 100 % is not a safe dose.", "Other doses unknown.");
        assertThat(shares(SITE, SEVENTY, block("lidocaine", true, "100")).cautions())
                .containsExactly("A share below 100 % is not a safe dose.");
    }

    @Test
    void theAnswerAboutOtherDosesMustAgreeWithTheList() {
        assertThatThrownBy(() -> new DoseBudget(List.of(), OtherDoses.ASKED_GIVEN))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new DoseBudget(
                        List.of(dose("lidocaine", true, "70", Dose.Purpose.OTHER_TODAY)), OtherDoses.ASKED_NONE))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void exceedingNeedsAReasonAndAName() {
        assertThatThrownBy(() -> new Exceeding(" ", "Doe^Jo", NOW)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Exceeding("discussed", "", NOW)).isInstanceOf(Refusal.class);
        assertThat(new Exceeding("discussed", "Doe^Jo", NOW).reason()).isEqualTo("discussed");
    }

    @Test
    void limitsThatAreNoneAreRefused() {
        assertThatThrownBy(() -> new FormularyRow.Limit(
                        Optional.empty(), Optional.empty(), WeightBasis.ACTUAL, Optional.empty(), OptionalInt.empty()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> limit("0", Optional.empty(), OptionalInt.empty()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> limit("2", Optional.empty(), OptionalInt.of(0)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new FormularyRow.Ages(OptionalInt.of(20), OptionalInt.of(10)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new FormularyRow.Origin("XX", " ", "1")).isInstanceOf(IllegalArgumentException.class);
    }
}
