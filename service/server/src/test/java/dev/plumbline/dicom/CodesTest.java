// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.agents.OtherDoses;
import dev.plumbline.agents.Weight;
import dev.plumbline.agents.WeightBasis;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.Reason;
import dev.plumbline.observation.Phase;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.Limit;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanNote;
import dev.plumbline.plan.TargetKind;
import dev.plumbline.procedure.Happening;
import dev.plumbline.procedure.Pain;
import dev.plumbline.procedure.ProcedureContext.Allergies;
import dev.plumbline.procedure.ProcedureContext.Coagulation;
import dev.plumbline.procedure.ProcedureContext.Localisation;
import dev.plumbline.procedure.ProcedureContext.Neurology;
import dev.plumbline.procedure.ProcedureContext.PatientState;
import dev.plumbline.procedure.Resistance;
import dev.plumbline.procedure.SetUpChecks;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.procedure.Spread;
import dev.plumbline.procedure.Supervision;
import dev.plumbline.procedure.TipAtInjection;
import dev.plumbline.record.FrameRole;
import dev.plumbline.sight.Seen;
import dev.plumbline.sight.StopSign;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class CodesTest {
    private static Stream<Codes.Entry> entries() {
        return Codes.sets().stream().flatMap(set -> set.entries().stream());
    }

    @Test
    void valuesAndMeaningsFitTheirValueRepresentations() {
        assertThat(entries()).hasSizeGreaterThan(600).allSatisfy(entry -> {
            assertThat(entry.code().value()).matches("[^\\\\\\\\]{1,16}");
            assertThat(entry.code().meaning()).matches("[^\\\\\\\\]{1,64}");
            assertThat(entry.source()).isIn("own", "JAR", "PYD", "DOC", "RUN", "MEM", "RAPM");
        });
    }

    @Test
    void everyCodeStandsInTheFileOnce() {
        assertThat(entries()
                        .map(entry -> entry.code().scheme() + " " + entry.code().value()))
                .doesNotHaveDuplicates();
    }

    @Test
    void everyWordOfASetStandsForOneCode() {
        assertThat(Codes.sets())
                .allSatisfy(set -> assertThat(set.entries().stream().flatMap(entry -> entry.word().stream()))
                        .doesNotHaveDuplicates());
    }

    @Test
    void ourOwnCodesAreMarkedAsOurs() {
        assertThat(entries().filter(entry -> entry.code().scheme().equals(Codes.OWN_SCHEME)))
                .allMatch(entry -> List.of("own", "MEM", "RAPM").contains(entry.source()));
    }

    static Stream<Arguments> enums() {
        return Stream.of(
                words("reasons", Reason.values(), Reason::word),
                words("assumptions", Assumption.values(), Assumption::word),
                words("doubts", Doubt.values(), Doubt::word),
                words("phases", Phase.values(), Phase::word),
                words("image roles", FrameRole.values(), FrameRole::word),
                words("limits", Limit.Kind.values(), Limit.Kind::word),
                words("notes", PlanNote.values(), PlanNote::word),
                words("target kinds", TargetKind.values(), TargetKind::word),
                words("hazard kinds", Hazard.Kind.values(), Hazard.Kind::word),
                words("plan sources", Plan.Source.values(), Plan.Source::word),
                words("approaches", Approach.values(), Approach::word),
                words("patient states", PatientState.values(), PatientState::word),
                words("coagulation", Coagulation.values(), Coagulation::word),
                words("neurological baseline", Neurology.values(), Neurology::word),
                words("allergies", Allergies.values(), Allergies::word),
                words("localisation", Localisation.values(), Localisation::word),
                words("check states", SetUpChecks.Answer.values(), SetUpChecks.Answer::word),
                words("sight details", SightDetail.values(), SightDetail::word),
                words("sight states", Seen.values(), Seen::word),
                words("tip at injection", TipAtInjection.values(), TipAtInjection::word),
                words("stop signs", StopSign.values(), StopSign::word),
                words("changes", Happening.ContextChanged.What.values(), Happening.ContextChanged.What::word),
                words("spread", Spread.values(), Spread::word),
                words("resistance", Resistance.Word.values(), Resistance.Word::word),
                words("pain", Pain.values(), Pain::word),
                words("supervision", Supervision.values(), Supervision::word),
                words("weight sources", Weight.Source.values(), Weight.Source::word),
                words("weight bases", WeightBasis.values(), WeightBasis::word),
                words("other local anaesthetic", OtherDoses.values(), OtherDoses::word),
                words("deviations", DeviationQuantity.values(), DeviationQuantity::field));
    }

    private static <E> Arguments words(String set, E[] values, Function<E, String> word) {
        return Arguments.of(set, Arrays.stream(values).map(word).toList());
    }

    @ParameterizedTest
    @MethodSource("enums")
    void everyWordOfTheEngineHasItsCode(String set, List<String> words) {
        assertThat(Codes.set(set).entries().stream().flatMap(entry -> entry.word().stream()))
                .containsExactlyInAnyOrderElementsOf(words);
    }

    @Test
    void everyNumberThatIsWrittenHasItsQuantity() {
        Stream.of(PlanGroup.IN_PLANE, PlanGroup.OUT_OF_PLANE)
                .flatMap(List::stream)
                .forEach(row -> assertThat(Quantity.of(row.measurand()).unit().value())
                        .isEqualTo(row.measurand().unit().ucum()));
        Stream.of(ObservationGroup.IN_PLANE, ObservationGroup.OUT_OF_PLANE)
                .flatMap(List::stream)
                .forEach(row -> assertThat(Quantity.of(row.measurand()).unit().value())
                        .isEqualTo(row.measurand().unit().ucum()));
        Stream.of(ObservationGroup.DEVIATIONS_IN_PLANE, ObservationGroup.DEVIATIONS_OUT_OF_PLANE)
                .flatMap(List::stream)
                .forEach(row -> {
                    assertThat(Quantity.deviation(row.measurand()).unit().value())
                            .isEqualTo(row.measurand().unit().ucum());
                    assertThat(Codes.own(row.judgedAs()).meaning()).contains("judged");
                });
    }

    /** GEOMETRY's list of reasons gives each its qualifier of CID 42. */
    @Test
    void everyReasonHasAQualifier() {
        assertThat(Codes.set("reasons").entries())
                .extracting(entry -> entry.text("qualifier").map(Codes::named))
                .allMatch(Optional::isPresent);
    }

    @Test
    void everyBlockHasItsSite() {
        assertThat(Codes.set("blocks").entries()).allSatisfy(block -> {
            assertThat(block.word()).isPresent();
            assertThat(Blocks.site(block).meaning()).isNotBlank();
        });
    }

    @Test
    void everyTemplateNamesOnlyCodesAndSetsOfTheFile() {
        assertThat(Templates.identifiers())
                .allSatisfy(identifier ->
                        assertThat(Templates.of(identifier)).isNotEmpty().allSatisfy(CodesTest::known));
    }

    private static void known(Templates.Node node) {
        node.row().values().stream()
                .filter(value -> value.startsWith("set "))
                .forEach(value ->
                        assertThat(Codes.set(value.substring(4)).entries()).isNotEmpty());
        node.row().values().stream()
                .filter(value -> !value.startsWith("set "))
                .forEach(value -> assertThat(Codes.named(value).meaning()).isNotBlank());
        node.row()
                .include()
                .ifPresent(included -> assertThat(Templates.of(included)).isNotEmpty());
        node.children().forEach(CodesTest::known);
    }
}
