// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.Deviation;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.geometry.Reason;
import dev.plumbline.observation.Observation;
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
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/**
 * A comparison of the right shape with numbers and reasons at random: what a record does with a case does not depend on
 * what the engine makes of it, and most random cases would be refused.
 */
final class AnyComparison {
    private final Random random;
    private final CaseDocument document;
    private final boolean inPlane;

    private AnyComparison(CaseDocument document, Random random) {
        this.random = random;
        this.document = document;
        inPlane = document.approach() == Approach.IN_PLANE;
    }

    static Comparison of(CaseDocument document, Random random) {
        AnyComparison any = new AnyComparison(document, random);
        List<Observation> observations = new ArrayList<>();
        List<Deviation> deviations = new ArrayList<>();
        for (ObservedFrame observed : document.observations()) {
            observations.add(any.observation(observed));
            deviations.add(any.deviation(observed));
        }
        return new Comparison(any.plan(), observations, deviations);
    }

    private Reading reading() {
        if (random.nextInt(4) == 0) {
            return Reading.notSeen(Reason.values()[random.nextInt(Reason.values().length)]);
        }
        double magnitude = Math.pow(10, random.nextInt(7) - 3);
        return new Reading.Seen((random.nextDouble() - 0.3) * magnitude, random.nextDouble() * magnitude);
    }

    private PointPx point() {
        return new PointPx(random.nextDouble() * 900 - 100, random.nextDouble() * 900 - 100);
    }

    private Plan plan() {
        Map<PlanQuantity, Reading> readings = new EnumMap<>(PlanQuantity.class);
        (inPlane ? PlanGroup.IN_PLANE : PlanGroup.OUT_OF_PLANE)
                .forEach(row -> readings.put(row.measurand(), reading()));
        Readings<PlanQuantity> all = new Readings<>(readings, PlanQuantity.class);
        Plan.Judgement judgement = new Plan.Judgement(
                List.of(new Limit(Limit.Kind.HAZARD, Optional.of("h\u00e4zard \"0"))),
                List.of(Limit.of(Limit.Kind.REACH)),
                List.of(PlanNote.values()),
                List.of(Assumption.values()),
                List.of(Doubt.values()));
        PointPx target = document.marks().target();
        if (!inPlane) {
            return new OutOfPlanePlan(
                    Plan.Source.STATED, true, true, all, target, judgement, List.of(), List.of(), List.of(), "");
        }
        return new InPlanePlan(
                Plan.Source.STATED,
                true,
                true,
                all,
                random.nextBoolean()
                        ? Optional.of(new InPlanePlan.Line(point(), target, Optional.of(point())))
                        : Optional.empty(),
                clearances(),
                judgement,
                new InPlanePlan.Choices(List.of(), Optional.empty(), Optional.empty(), List.of()),
                List.of(),
                "");
    }

    private InPlanePlan.Clearances clearances() {
        List<Clearance> hazards = new ArrayList<>();
        List<Clearance> nerves = new ArrayList<>();
        document.marks().hazards().forEach(h -> hazards.add(new Clearance(h.name(), reading(), reading(), false)));
        document.marks().nerves().forEach(n -> nerves.add(new Clearance(n.name(), reading(), reading(), false)));
        return new InPlanePlan.Clearances(hazards, nerves);
    }

    private Observation observation(ObservedFrame observed) {
        Map<ObservationQuantity, Reading> readings = new EnumMap<>(ObservationQuantity.class);
        (inPlane ? ObservationGroup.IN_PLANE : ObservationGroup.OUT_OF_PLANE)
                .forEach(row -> readings.put(row.measurand(), reading()));
        return new Observation(
                observed.marks().id(),
                observed.marks().phase(),
                new Readings<>(readings, ObservationQuantity.class),
                inPlane && random.nextBoolean() ? Optional.of(point()) : Optional.empty(),
                random.nextBoolean()
                        ? Optional.of(new Observation.CarriedPlan(
                                point(), document.marks().target()))
                        : Optional.empty(),
                List.of(Assumption.values()),
                List.of(Doubt.values()));
    }

    private Deviation deviation(ObservedFrame observed) {
        Map<DeviationQuantity, Reading> readings = new EnumMap<>(DeviationQuantity.class);
        (inPlane ? ObservationGroup.DEVIATIONS_IN_PLANE : ObservationGroup.DEVIATIONS_OUT_OF_PLANE)
                .forEach(row -> readings.put(row.measurand(), reading()));
        return new Deviation(observed.marks().id(), new Readings<>(readings, DeviationQuantity.class));
    }
}
