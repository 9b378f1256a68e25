// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.plan.Clearance;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Limit;
import dev.plumbline.plan.OutOfPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanNote;
import dev.plumbline.plan.PlanRow;
import dev.plumbline.plan.WayOut;
import java.util.Optional;

/** A plan of either approach as JSON. */
final class PlanJson {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private PlanJson() {}

    static ObjectNode of(Plan plan) {
        ObjectNode node = JSON.objectNode().put("source", plan.source().word()).put("feasible", plan.feasible());
        if (plan instanceof InPlanePlan inPlane) {
            node.put("approach", "inPlane").put("inBand", inPlane.inBand());
            judged(node, plan);
            putPath(node, inPlane);
        } else {
            OutOfPlanePlan outOfPlane = (OutOfPlanePlan) plan;
            node.put("approach", "outOfPlane").put("steep", outOfPlane.steep());
            judged(node, plan);
            node.set("rows", Quantities.array(outOfPlane.rows(), PlanJson::row));
            node.set("stepDown", Quantities.array(outOfPlane.stepDown(), PlanJson::step));
        }
        return node.put("text", plan.text());
    }

    private static void judged(ObjectNode node, Plan plan) {
        Quantities.putAll(node, plan.readings());
        Plan.Judgement judgement = plan.judgement();
        node.set("binding", Quantities.words(judgement.binding(), Limit::word));
        node.set("unchecked", Quantities.words(judgement.unchecked(), Limit::word));
        node.set("notes", Quantities.words(judgement.notes(), PlanNote::word));
        node.set("assumptions", Quantities.words(judgement.assumptions(), Assumption::word));
        node.set("doubts", Quantities.words(judgement.doubts(), Doubt::word));
        node.set("waysOut", Quantities.array(plan.waysOut(), PlanJson::wayOut));
    }

    private static void putPath(ObjectNode node, InPlanePlan plan) {
        node.set("firstSeenAt", Quantities.mark(plan.line().flatMap(InPlanePlan.Line::firstSeen)));
        node.set("entryAt", Quantities.mark(plan.line().map(InPlanePlan.Line::entry)));
        node.set("hazardClearances", Quantities.array(plan.clearances().hazards(), PlanJson::hazard));
        node.set("nerveClearances", Quantities.array(plan.clearances().nerves(), PlanJson::nerve));
        InPlanePlan.Choices choices = plan.choices();
        node.set(
                "feasibleEntriesMm",
                Quantities.array(
                        choices.feasibleEntries(),
                        interval -> JSON.arrayNode().add(interval.low()).add(interval.high())));
        node.set("flattest", rowIfAny(choices.flattest()));
        node.set("steepest", rowIfAny(choices.steepest()));
        node.set("alternatives", Quantities.array(choices.alternatives(), PlanJson::row));
    }

    private static ObjectNode hazard(Clearance clearance) {
        ObjectNode node = JSON.objectNode().put("name", clearance.name());
        node.set("clearanceMm", Quantities.quantity(clearance.path()));
        return node.put("marginLimitedByTarget", clearance.marginLimitedByTarget());
    }

    private static ObjectNode nerve(Clearance clearance) {
        ObjectNode node = JSON.objectNode().put("name", clearance.name());
        node.set("pathMm", Quantities.quantity(clearance.path()));
        node.set("overshootMm", Quantities.quantity(clearance.overshoot()));
        return node;
    }

    private static ObjectNode wayOut(WayOut way) {
        ObjectNode node = JSON.objectNode().put("kind", way.kind().word());
        Quantities.putAll(node, way.readings());
        return node.put("text", way.text());
    }

    private static JsonNode rowIfAny(Optional<PlanRow> row) {
        return row.<JsonNode>map(PlanJson::row).orElseGet(JSON::nullNode);
    }

    private static ObjectNode row(PlanRow row) {
        ObjectNode node = JSON.objectNode();
        Quantities.putAll(node, row.readings());
        node.put("feasible", row.feasible());
        node.set("why", Quantities.words(row.why(), Limit::word));
        return node;
    }

    private static ObjectNode step(OutOfPlanePlan.Step step) {
        ObjectNode node = JSON.objectNode();
        node.set("angleToSkinDeg", Quantities.quantity(step.angleToSkinDeg()));
        node.set("crossingDepthMm", Quantities.quantity(step.crossingDepthMm()));
        return node;
    }
}
