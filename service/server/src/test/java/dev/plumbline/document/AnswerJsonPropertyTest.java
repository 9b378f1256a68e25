// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.config.NeedleFile;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Reason;
import dev.plumbline.geometry.Side;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanMarks;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Cautions;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.ObservedFrame;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;

/** Whatever is asked: a refusal that names its field, or an answer in which every number is a value or a reason. */
class AnswerJsonPropertyTest {
    private static final AnswerJson ANSWERS = new AnswerJson(NeedleFile.shipped());
    private static final Set<String> REASONS =
            new HashSet<>(Arrays.stream(Reason.values()).map(Reason::word).toList());

    @Property
    void everyQuantityIsAValueWithUncertaintyOrAReason(@ForAll("stated") CaseDocument document) {
        Optional<Comparison> comparison = comparison(document);
        Statistics.label("case").collect(comparison.isPresent() ? "answered" : "refused");
        comparison.ifPresent(answered -> check(document, answered));
    }

    private static Optional<Comparison> comparison(CaseDocument document) {
        try {
            CaseInputs inputs = CaseInputs.of(document, frame -> {
                throw new IllegalStateException("All frames are stated.");
            });
            return Optional.of(Comparison.of(inputs.plan(), inputs.observations()));
        } catch (Refusal refusal) {
            assertThat(refusal.problem().pointer()).startsWith("/");
            assertThat(refusal.problem().detail()).isNotBlank();
            assertThat(refusal.problem().remedy()).isNotBlank();
            return Optional.empty();
        }
    }

    private static void check(CaseDocument document, Comparison comparison) {
        JsonNode answer = ANSWERS.comparison(document, comparison);
        Plan plan = comparison.plan();
        assertThat(answer.path("cautions").get(0).asText()).isEqualTo(Cautions.text());
        plan.readings().measurands().forEach(m -> quantity(answer.path("plan"), m));
        for (int i = 0; i < comparison.observations().size(); i++) {
            JsonNode observation = answer.path("observations").get(i);
            for (ObservationQuantity quantity :
                    comparison.observations().get(i).readings().measurands()) {
                quantity(observation, quantity);
            }
            JsonNode deviation = answer.path("deviations").get(i);
            comparison.deviations().get(i).readings().measurands().forEach(m -> {
                quantity(deviation, m);
                JsonNode difference = deviation.path(m.field());
                assertThat(difference.has("exceedsUncertainty"))
                        .isEqualTo(!difference.path("value").isNull());
            });
        }
        assertThat(answer.toString())
                .doesNotContain("NaN")
                .doesNotContain("Infinity")
                .doesNotContain("-0.0,");
    }

    private static void quantity(JsonNode answer, Measurand measurand) {
        JsonNode quantity = answer.path(measurand.field());
        if (quantity.path("value").isNull()) {
            assertThat(REASONS).contains(quantity.path("reason").asText());
        } else {
            assertThat(quantity.path("value").isNumber()).as(measurand.field()).isTrue();
            assertThat(quantity.path("expandedUncertainty").doubleValue())
                    .isEqualTo(2 * quantity.path("standardUncertainty").doubleValue());
        }
    }

    @Provide
    Arbitrary<CaseDocument> stated() {
        return Arbitraries.longs().map(AnswerJsonPropertyTest::sensible);
    }

    /** Level skin near the top, a target below it: most can be answered. */
    private static CaseDocument sensible(long seed) {
        CaseDocument any = CaseDocuments.of(seed);
        Random random = new Random(seed);
        FrameRef frame = new FrameRef.Stated(640, 480, 0.08, 0.08);
        Probe probe = new Probe(
                Optional.of(Probe.Kind.LINEAR),
                any.probe().footprintMm(),
                random.nextBoolean() ? Optional.of(new PointPx(320, 20)) : Optional.empty(),
                Optional.of(random.nextBoolean() ? Side.LEFT : Side.RIGHT),
                any.probe().beamThicknessMm(),
                Optional.empty(),
                OptionalDouble.empty(),
                any.probe().housingHalfThicknessMm(),
                Optional.empty());
        PlanMarks marks = new PlanMarks(
                new PointPx(random.nextInt(640), 40 + random.nextInt(400)),
                any.marks().targetKind(),
                random.nextBoolean() ? List.of(new PointPx(0, 20), new PointPx(640, 20)) : List.of(),
                List.of(),
                List.of());
        return new CaseDocument(
                any.caseId(),
                any.approach(),
                frame,
                probe,
                marks,
                any.needle(),
                any.intent(),
                any.constraints(),
                any.uncertainty(),
                any.observations().stream()
                        .map(o -> new ObservedFrame(o.marks(), frame))
                        .toList(),
                any.context(),
                any.signature());
    }

    /** The names of the contract that outside checks read; more may be added, none taken away. */
    @Property(tries = 1)
    void thePlansOfTheExamplesHaveEveryFieldOfTheContract() throws Exception {
        assertThat(names(DocumentedCases.answer("case-in-plane.md").path("plan")))
                .containsAll(List.of(
                        "source",
                        "feasible",
                        "angleToSkinDeg",
                        "entryDistanceMm",
                        "entryFromProbeEdgeMm",
                        "entryFromTargetColumnMm",
                        "targetDepthMm",
                        "pathMm",
                        "leadInMm",
                        "firstSeenDepthMm",
                        "firstSeenAt",
                        "shortestNeedleMm",
                        "needleLeftMm",
                        "hazardClearances",
                        "nerveClearances",
                        "beamIncidenceDeg",
                        "specularReturnShare",
                        "sidewaysToleranceMm",
                        "rotationToleranceDeg",
                        "heelInDeg",
                        "inBand",
                        "notes",
                        "binding",
                        "unchecked",
                        "assumptions",
                        "doubts",
                        "waysOut",
                        "feasibleEntriesMm",
                        "flattest",
                        "steepest",
                        "alternatives",
                        "text"));
        assertThat(names(DocumentedCases.answer("case-out-of-plane.md").path("plan")))
                .containsAll(List.of(
                        "source",
                        "feasible",
                        "punctureDistanceMm",
                        "punctureFromProbeEdgeMm",
                        "alongProbeMm",
                        "angleToSkinDeg",
                        "targetDepthMm",
                        "pathMm",
                        "shortestNeedleMm",
                        "steep",
                        "rows",
                        "stepDown",
                        "binding",
                        "unchecked",
                        "assumptions",
                        "waysOut",
                        "text"));
    }

    private static List<String> names(JsonNode node) {
        return node.properties().stream().map(field -> field.getKey()).toList();
    }
}
