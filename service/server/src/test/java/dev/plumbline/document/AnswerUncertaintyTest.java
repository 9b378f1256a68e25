// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.config.NeedleFile;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.record.CaseDocument;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Every number of an answer is a quantity with its uncertainty, or stands without a value for a reason. */
class AnswerUncertaintyTest {
    /** Places on the picture, bounds of a choice that is exact once it is made, and what a list says of a needle. */
    private static final Set<String> NO_QUANTITIES = Set.of(
            "firstSeenAt",
            "entryAt",
            "feasibleEntriesMm",
            "lengthMm",
            "gauge",
            "outerDiameterMm",
            "innerDiameterMm",
            "resistanceRelative",
            "resistanceReferenceGauge");

    private static final String IN_PLANE = """
            {"schema":"plumbline-case/1","approach":"inPlane",
             "frame":{"columns":640,"rows":640,"mmPerColumn":0.06,"mmPerRow":0.06},
             "probe":{"kind":"linear","footprintMm":38,"midpoint":{"column":320,"row":40},"needleSide":"right"%s},
             "marks":{"target":{"column":320,"row":360},"skin":[{"column":0,"row":40},{"column":640,"row":40}],
              "nerves":[{"name":"nerve","disc":{"center":{"column":320,"row":420},"radiusMm":1.5}}],
              "hazards":[{"name":"artery","kind":"artery","marginMm":2,
                "disc":{"center":{"column":150,"row":260},"radiusMm":3}}]},
             "needle":{"gauge":22,"lengthMm":%s}%s,
             "observations":[{"id":"obs-1","shaft":[{"column":600,"row":180},{"column":400,"row":300}],
               "tip":{"column":330,"row":350},"tipIsTip":%s}]}""";

    private static final String OUT_OF_PLANE = """
            {"schema":"plumbline-case/1","approach":"outOfPlane",
             "frame":{"columns":640,"rows":640,"mmPerColumn":0.06,"mmPerRow":0.06},
             "probe":{"kind":"linear","footprintMm":38,"midpoint":{"column":320,"row":40},"housingHalfThicknessMm":9},
             "marks":{"target":{"column":330,"row":360},"skin":[{"column":0,"row":40},{"column":640,"row":40}]},
             "needle":{"gauge":22,"lengthMm":%s}%s,
             "observations":[{"id":"obs-1","tip":{"column":325,"row":340},"tipIsTip":true,"punctureDistanceMm":18}]}""";

    private static JsonNode answer(String json) {
        CaseDocument document = CaseJson.read(json.getBytes(StandardCharsets.UTF_8), Door.HTTP);
        CaseInputs inputs = CaseInputs.of(document, frame -> {
            throw new IllegalStateException("The case states its scale.");
        });
        return new AnswerJson(NeedleFile.shipped())
                .comparison(document, Comparison.of(inputs.plan(), inputs.observations()));
    }

    private static List<JsonNode> answers() {
        return List.of(
                answer(IN_PLANE.formatted("", "80", "", "true")),
                answer(IN_PLANE.formatted(
                        ",\"speedOfSoundMPerS\":1480", "80", ",\"intent\":{\"entryDistanceMm\":45}", "true")),
                answer(IN_PLANE.formatted(
                        ",\"skinBeyondProbe\":{\"radiusMm\":60}",
                        "50",
                        ",\"intent\":{\"entryDistanceMm\":40}",
                        "false")),
                answer(IN_PLANE.formatted(",\"housingLengthMm\":60", "30", "", "true")),
                answer(OUT_OF_PLANE.formatted("80", "")),
                answer(OUT_OF_PLANE.formatted("40", ",\"intent\":{\"punctureDistanceMm\":35}")),
                answer(OUT_OF_PLANE.formatted("25", "")));
    }

    /** API 2: a quantity that an approach does not have is null with its reason, never left out. */
    @Test
    void everyQuantityOfAnObservationAndADeviationIsThere() {
        for (JsonNode answer : answers()) {
            JsonNode observation = answer.path("observations").get(0);
            assertThat(List.of(ObservationQuantity.values()))
                    .allSatisfy(quantity -> assertThat(
                                    observation.path(quantity.field()).has("value"))
                            .as(quantity.field())
                            .isTrue());
            JsonNode deviation = answer.path("deviations").get(0);
            assertThat(List.of(DeviationQuantity.values()))
                    .allSatisfy(quantity -> assertThat(
                                    deviation.path(quantity.field()).has("value"))
                            .as(quantity.field())
                            .isTrue());
        }
        JsonNode inPlane = answers().get(0);
        assertThat(reason(inPlane, "observations", "bowMm")).isEqualTo("notMarked");
        assertThat(reason(inPlane, "deviations", "punctureDistanceMm")).isEqualTo("notInThisPlane");
        assertThat(reason(answers().get(4), "deviations", "alongPlanMm")).isEqualTo("notInThisPlane");
    }

    private static String reason(JsonNode answer, String part, String field) {
        return answer.path(part).get(0).path(field).path("reason").asText();
    }

    /** How many quantities were met. */
    private static int walk(JsonNode node, String path) {
        if (node.isNumber()) {
            throw new AssertionError("A bare number at " + path);
        }
        if (node.has("value")) {
            quantity(node, path);
            return 1;
        }
        int met = 0;
        if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                met += walk(node.get(i), path + "/" + i);
            }
            return met;
        }
        for (var field : node.properties()) {
            if (!NO_QUANTITIES.contains(field.getKey())) {
                met += walk(field.getValue(), path + "/" + field.getKey());
            }
        }
        return met;
    }

    private static void quantity(JsonNode node, String path) {
        if (node.get("value").isNull()) {
            assertThat(node.path("reason").asText()).as(path).isNotEmpty();
            return;
        }
        assertThat(node.path("standardUncertainty").isNumber()).as(path).isTrue();
        double standard = node.path("standardUncertainty").doubleValue();
        assertThat(standard).as(path).isNotNegative();
        assertThat(node.path("expandedUncertainty").doubleValue()).as(path).isEqualTo(2 * standard);
    }

    @Test
    void noAnswerHoldsABareNumber() {
        for (JsonNode answer : answers()) {
            assertThat(walk(answer, "")).isGreaterThan(30);
        }
    }

    @Test
    void theAnswersHoldEveryKindOfRow() {
        List<JsonNode> answers = answers();
        for (String list :
                List.of("alternatives", "hazardClearances", "nerveClearances", "waysOut", "stepDown", "rows")) {
            assertThat(answers)
                    .as(list)
                    .anyMatch(answer -> answer.path("plan").path(list).size() > 0);
        }
        JsonNode last = answers.get(4).path("plan").path("stepDown");
        assertThat(last.get(0)
                        .path("crossingDepthMm")
                        .path("standardUncertainty")
                        .doubleValue())
                .isZero();
        assertThat(last.get(last.size() - 1)
                        .path("crossingDepthMm")
                        .path("standardUncertainty")
                        .doubleValue())
                .isPositive();
    }

    /** Control: the walk finds what is missing. */
    @Test
    void aBareNumberIsFound() throws Exception {
        ObjectMapper mapper = new ObjectMapper();
        assertThatThrownBy(() -> walk(mapper.readTree("{\"plan\":{\"rows\":[{\"pathMm\":3.5}]}}"), ""))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("/plan/rows/0/pathMm");
        assertThatThrownBy(() -> walk(mapper.readTree("{\"pathMm\":{\"value\":3.5}}"), ""))
                .isInstanceOf(AssertionError.class);
    }
}
