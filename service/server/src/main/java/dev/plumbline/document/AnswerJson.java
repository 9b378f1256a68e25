// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.Deviation;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.Phase;
import dev.plumbline.plan.Plan;
import dev.plumbline.record.Cautions;
import java.util.Optional;

/** Answers as JSON, the same at every door; each comes with the cautions. */
public final class AnswerJson {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private AnswerJson() {}

    /** {@code { "plan", "cautions" }}. */
    public static ObjectNode plan(Plan plan) {
        ObjectNode answer = JSON.objectNode();
        answer.set("plan", PlanJson.of(plan));
        return withCautions(answer);
    }

    /** {@code { "plan", "observations", "deviations", "cautions" }}. */
    public static ObjectNode comparison(Comparison comparison) {
        ObjectNode answer = JSON.objectNode();
        answer.set("plan", PlanJson.of(comparison.plan()));
        ArrayNode observations = answer.putArray("observations");
        comparison.observations().forEach(o -> observations.add(observation(o)));
        ArrayNode deviations = answer.putArray("deviations");
        comparison.deviations().forEach(d -> deviations.add(deviation(d)));
        return withCautions(answer);
    }

    /** The cautions as every answer carries them. */
    public static ArrayNode cautions() {
        return JSON.arrayNode().add(Cautions.text());
    }

    private static ObjectNode withCautions(ObjectNode answer) {
        answer.set("cautions", cautions());
        return answer;
    }

    private static ObjectNode observation(Observation observation) {
        ObjectNode node = JSON.objectNode().put("id", observation.id());
        Optional<String> phase = observation.phase().map(Phase::word);
        if (phase.isPresent()) {
            node.put("phase", phase.get());
        } else {
            node.putNull("phase");
        }
        Quantities.putAll(node, observation.readings());
        node.set("entryAt", Quantities.mark(observation.entry()));
        node.set("assumptions", Quantities.words(observation.assumptions(), Assumption::word));
        node.set("doubts", Quantities.words(observation.doubts(), Doubt::word));
        return node;
    }

    private static ObjectNode deviation(Deviation deviation) {
        ObjectNode node = JSON.objectNode().put("id", deviation.id());
        Quantities.putAllDifferences(node, deviation.readings());
        return node;
    }
}
