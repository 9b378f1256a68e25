// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.plan.Clearance;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Limit;
import dev.plumbline.plan.OutOfPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanNote;
import dev.plumbline.plan.PlanQuantity;
import dev.plumbline.plan.PlanRow;
import dev.plumbline.plan.SetUp;
import dev.plumbline.plan.SpecularReturn;
import java.util.Optional;

/** The fields of a plan of either approach. */
final class PlanJson {
    private final AnswerWriter out;

    PlanJson(AnswerWriter out) {
        this.out = out;
    }

    void fields(Plan plan) {
        out.put("source", plan.source().word()).put("feasible", plan.feasible());
        if (plan instanceof InPlanePlan inPlane) {
            out.put("approach", "inPlane").put("inBand", inPlane.inBand());
            judged(plan);
            path(inPlane);
        } else {
            OutOfPlanePlan outOfPlane = (OutOfPlanePlan) plan;
            out.put("approach", "outOfPlane").put("steep", outOfPlane.steep());
            judged(plan);
            out.objects("rows", outOfPlane.rows(), this::row).objects("stepDown", outOfPlane.stepDown(), this::step);
        }
        setUp(SetUp.of(plan));
        out.put("text", plan.text());
    }

    private void judged(Plan plan) {
        Quantities.all(out, plan.readings());
        if (plan.readings().has(PlanQuantity.SPECULAR_RETURN)) {
            out.put("specularReturnText", SpecularReturn.WORDS);
        }
        Plan.Judgement judgement = plan.judgement();
        out.words("binding", judgement.binding(), Limit::word)
                .words("unchecked", judgement.unchecked(), Limit::word)
                .words("notes", judgement.notes(), PlanNote::word)
                .words("assumptions", judgement.assumptions(), Assumption::word)
                .words("doubts", judgement.doubts(), Doubt::word)
                .objects("waysOut", plan.waysOut(), way -> {
                    out.put("kind", way.kind().word());
                    Quantities.all(out, way.readings());
                    out.put("text", way.text());
                });
    }

    private void path(InPlanePlan plan) {
        Quantities.mark(out, "firstSeenAt", plan.line().flatMap(InPlanePlan.Line::firstSeen));
        Quantities.mark(out, "entryAt", plan.line().map(InPlanePlan.Line::entry));
        out.objects("hazardClearances", plan.clearances().hazards(), this::hazard)
                .objects("nerveClearances", plan.clearances().nerves(), this::nerve);
        InPlanePlan.Choices choices = plan.choices();
        out.pairs("feasibleEntriesMm", choices.feasibleEntries(), i -> new double[] {i.low(), i.high()});
        rowIfAny("flattest", choices.flattest());
        rowIfAny("steepest", choices.steepest());
        out.objects("alternatives", choices.alternatives(), this::row);
    }

    private void hazard(Clearance clearance) {
        out.put("name", clearance.name());
        Quantities.quantity(out, "clearanceMm", clearance.path());
        out.put("marginLimitedByTarget", clearance.marginLimitedByTarget());
    }

    private void nerve(Clearance clearance) {
        out.put("name", clearance.name());
        Quantities.quantity(out, "pathMm", clearance.path());
        Quantities.quantity(out, "overshootMm", clearance.overshoot());
    }

    private void rowIfAny(String name, Optional<PlanRow> row) {
        if (row.isPresent()) {
            out.object(name, () -> row(row.get()));
        } else {
            out.putNull(name);
        }
    }

    private void row(PlanRow row) {
        Quantities.all(out, row.readings());
        out.put("feasible", row.feasible()).words("why", row.why(), Limit::word);
    }

    private void step(OutOfPlanePlan.Step step) {
        Quantities.quantity(out, "angleToSkinDeg", step.angleToSkinDeg());
        Quantities.quantity(out, "crossingDepthMm", step.crossingDepthMm());
    }

    private void setUp(SetUp advice) {
        out.object("setUpAdvice", () -> {
            Quantities.quantity(out, "imagingDepthMm", advice.imagingDepthMm());
            Quantities.quantity(out, "focusDepthMm", advice.focusDepthMm());
            out.put("text", advice.text());
        });
    }
}
