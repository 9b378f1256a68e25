// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.Deviation;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.geometry.Reason;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Clearance;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Limit;
import dev.plumbline.plan.OutOfPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanNote;
import dev.plumbline.plan.PlanQuantity;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.ObservedFrame;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A comparison whose numbers are made up: what a record does with numbers does not depend on how they were computed. */
final class HandMadeComparison {
    private static final PointPx ENTRY_SEEN = new PointPx(598.125, 40);

    private final CaseDocument document;
    private final boolean inPlane;
    private final PointPx entry;

    private HandMadeComparison(CaseDocument document, PointPx entry) {
        this.document = document;
        this.inPlane = document.approach() == Approach.IN_PLANE;
        this.entry = entry;
    }

    static Comparison of(CaseDocument document, PointPx entry) {
        HandMadeComparison made = new HandMadeComparison(document, entry);
        List<Observation> observations =
                document.observations().stream().map(made::observation).toList();
        List<Deviation> deviations =
                document.observations().stream().map(made::deviation).toList();
        return new Comparison(made.plan(), observations, deviations);
    }

    private static Reading number(Measurand measurand, double base) {
        double value = base + Math.sqrt(2) * (1 + measurand.field().length());
        return new Reading.Seen(value, value / 100);
    }

    private Plan plan() {
        Map<PlanQuantity, Reading> readings = new EnumMap<>(PlanQuantity.class);
        (inPlane ? PlanGroup.IN_PLANE : PlanGroup.OUT_OF_PLANE)
                .forEach(row -> readings.put(row.measurand(), number(row.measurand(), 10)));
        readings.put(PlanQuantity.NEEDLE_LEFT, Reading.notSeen(Reason.NOT_MARKED));
        Readings<PlanQuantity> all = new Readings<>(readings, PlanQuantity.class);
        Plan.Judgement judgement = new Plan.Judgement(
                List.of(new Limit(Limit.Kind.HAZARD, Optional.of("artery"))),
                List.of(Limit.of(Limit.Kind.REACH)),
                List.of(PlanNote.NO_NERVE_MARKED),
                List.of(Assumption.NEEDLE_STRAIGHT),
                List.of(Doubt.SKIN_ASSUMED));
        PointPx target = document.marks().target();
        if (!inPlane) {
            return new OutOfPlanePlan(
                    Plan.Source.STATED, false, false, all, target, judgement, List.of(), List.of(), List.of(), "");
        }
        return new InPlanePlan(
                Plan.Source.STATED,
                false,
                true,
                all,
                Optional.of(new InPlanePlan.Line(entry, target, Optional.of(new PointPx(500, 200.3)))),
                clearances(),
                judgement,
                new InPlanePlan.Choices(List.of(), Optional.empty(), Optional.empty(), List.of()),
                List.of(),
                "");
    }

    private InPlanePlan.Clearances clearances() {
        List<Clearance> hazards = new ArrayList<>();
        List<Clearance> nerves = new ArrayList<>();
        Reading seen = new Reading.Seen(7.25, 0.5);
        document.marks().hazards().forEach(h -> hazards.add(new Clearance(h.name(), seen, seen, false)));
        document.marks().nerves().forEach(n -> nerves.add(new Clearance(n.name(), seen, seen, false)));
        return new InPlanePlan.Clearances(hazards, nerves);
    }

    private boolean needleSeen(ObservationMarks marks) {
        return inPlane ? !marks.shaft().isEmpty() : marks.tip().isPresent();
    }

    private Observation observation(ObservedFrame observed) {
        ObservationMarks marks = observed.marks();
        Map<ObservationQuantity, Reading> readings = new EnumMap<>(ObservationQuantity.class);
        (inPlane ? ObservationGroup.IN_PLANE : ObservationGroup.OUT_OF_PLANE)
                .forEach(row -> readings.put(row.measurand(), number(row.measurand(), 20)));
        if (!marks.tipIsTip().orElse(false)) {
            for (ObservationQuantity unknown : List.of(
                    ObservationQuantity.TIP_DEPTH, ObservationQuantity.PATH, ObservationQuantity.TIP_TO_TARGET)) {
                readings.replace(unknown, Reading.notSeen(Reason.TIP_NOT_CONFIRMED));
            }
        }
        if (!needleSeen(marks)) {
            readings.replaceAll((measurand, reading) -> Reading.notSeen(Reason.SHAFT_NOT_VISIBLE));
        }
        boolean otherFrame = !observed.frame().equals(document.frame());
        PointPx target = document.marks().target();
        return new Observation(
                marks.id(),
                marks.phase(),
                new Readings<>(readings, ObservationQuantity.class),
                inPlane && needleSeen(marks) ? Optional.of(ENTRY_SEEN) : Optional.empty(),
                otherFrame
                        ? Optional.of(new Observation.CarriedPlan(inPlane ? entry : target, target))
                        : Optional.empty(),
                List.of(Assumption.NEEDLE_IN_IMAGE_PLANE),
                List.of());
    }

    private Deviation deviation(ObservedFrame observed) {
        Map<DeviationQuantity, Reading> readings = new HashMap<>();
        (inPlane ? ObservationGroup.DEVIATIONS_IN_PLANE : ObservationGroup.DEVIATIONS_OUT_OF_PLANE)
                .forEach(row -> readings.put(
                        row.measurand(),
                        needleSeen(observed.marks())
                                ? number(row.measurand(), -20)
                                : Reading.notSeen(Reason.SHAFT_NOT_VISIBLE)));
        return new Deviation(observed.marks().id(), new Readings<>(readings, DeviationQuantity.class));
    }
}
