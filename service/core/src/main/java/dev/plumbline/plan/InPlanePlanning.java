// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.CaseInputs;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.Extents;
import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.MarkedFrame;
import dev.plumbline.geometry.NominalInputs;
import dev.plumbline.geometry.Orientation;
import dev.plumbline.geometry.Quantities;
import dev.plumbline.geometry.Reason;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Plans a path in the image plane: first decides it at the nominal values, then computes it with its uncertainty. */
final class InPlanePlanning {
    private final PlanInput input;
    private final Orientation orientation;
    private final CaseInputs<Gradient> inputs;
    private final PlanFormulas formulas;
    private final Optional<InPlaneScene<Gradient>> nominal;

    InPlanePlanning(PlanInput input, Orientation orientation, CaseInputs<Gradient> inputs) {
        this.input = input;
        this.orientation = orientation;
        this.inputs = inputs;
        formulas = new PlanFormulas(input, orientation);
        nominal = formulas.scene(new CaseInputs<>(new NominalInputs(), input.uncertainty(), new Extents()));
    }

    Planning.Drafted plan() {
        if (nominal.isEmpty()) {
            return withoutSkin(formulas.frame(inputs));
        }
        InPlaneScene<Gradient> decided = nominal.get();
        TargetCheck.inTissue(decided);
        EntryLimits limits = new EntryLimits(decided);
        EntryChoice choice = EntryChoice.among(limits.feasible(), limits, decided.limits());
        Optional<Decision> decision = input.intent()
                .map(intent -> StatedPath.of(intent, decided))
                .or(() -> choice.proposed().isPresent()
                        ? Optional.of(new Decision.Entry(choice.proposed().getAsDouble()))
                        : Optional.empty());
        InPlaneScene<Gradient> scene = formulas.scene(inputs).orElseThrow();
        WaysOut waysOut = new WaysOut(decided, scene, orientation, inputs);
        return decision.flatMap(d -> InPlanePath.find(scene, d))
                .map(path -> withPath(path, limits, choice, waysOut))
                .orElseGet(() -> withoutPath(scene, limits, choice, waysOut));
    }

    private Planning.Drafted withPath(
            InPlanePath<Gradient> path, EntryLimits limits, EntryChoice choice, WaysOut waysOut) {
        List<Limit> broken = limits.brokenBy(path);
        PlanDraft<Gradient> draft = formulas.of(path);
        InPlaneScene<Gradient> scene = path.scene();
        List<PlanNote> notes = notes(path.degrees());
        List<WayOut> ways =
                broken.isEmpty() ? List.of() : waysOut.of(limits, broken, OptionalDouble.of(path.entryAlong()));
        InPlanePlan.Clearances clearances = Clearances.of(path, inputs.numbers());
        InPlanePlan plan = new InPlanePlan(
                source(),
                broken.isEmpty(),
                Angles.inBand(path.degrees(), scene.limits().angleBand()),
                draft.quantities().readings(inputs.numbers()),
                Optional.of(new InPlanePlan.Line(
                        scene.axes().toPixel(path.entry()),
                        input.marks().target(),
                        FirstSight.of(path).at())),
                clearances,
                judgement(broken, limits.unchecked(), notes, scene.frame()),
                choices(scene, limits, choice),
                ways,
                new InPlaneWords<>(scene, draft.quantities()).path(broken, notes, clearances));
        return new Planning.Drafted(plan, draft);
    }

    private Planning.Drafted withoutPath(
            InPlaneScene<Gradient> scene, EntryLimits limits, EntryChoice choice, WaysOut waysOut) {
        Quantities<PlanQuantity, Gradient> quantities = InPlaneQuantities.pathless(scene, Reason.INFEASIBLE);
        List<Limit> binding = limits.binding();
        List<WayOut> ways = waysOut.of(limits, binding, OptionalDouble.empty());
        InPlanePlan.Clearances clearances = Clearances.without(scene, Reason.INFEASIBLE);
        InPlanePlan plan = new InPlanePlan(
                source(),
                false,
                false,
                quantities.readings(inputs.numbers()),
                Optional.empty(),
                clearances,
                judgement(binding, limits.unchecked(), markNotes(), scene.frame()),
                choices(scene, limits, choice),
                ways,
                new InPlaneWords<>(scene, quantities).infeasible(binding, ways, clearances));
        return new Planning.Drafted(
                plan,
                new PlanDraft<>(
                        input, orientation, scene.frame(), quantities, Optional.empty(), Optional.of(scene.target())));
    }

    /** Without a skin line only what was stated is known. */
    private Planning.Drafted withoutSkin(MarkedFrame<Gradient> frame) {
        Quantities<PlanQuantity, Gradient> quantities = new Quantities<>(PlanQuantity.class);
        InPlaneQuantities.putPathless(quantities, Reason.SKIN_NOT_MARKED);
        input.intent().ifPresent(intent -> putStated(quantities, intent));
        InPlanePlan plan = new InPlanePlan(
                source(),
                false,
                false,
                quantities.readings(inputs.numbers()),
                Optional.empty(),
                new InPlanePlan.Clearances(List.of(), List.of()),
                judgement(
                        List.of(),
                        List.of(Limit.of(Limit.Kind.FOOTPRINT), Limit.of(Limit.Kind.REACH)),
                        markNotes(),
                        frame),
                new InPlanePlan.Choices(List.of(), Optional.empty(), Optional.empty(), List.of()),
                List.of(),
                InPlaneWords.withoutSkin());
        return new Planning.Drafted(
                plan, new PlanDraft<>(input, orientation, frame, quantities, Optional.empty(), Optional.empty()));
    }

    private static void putStated(Quantities<PlanQuantity, Gradient> quantities, Intent intent) {
        if (intent instanceof Intent.EntryDistance distance) {
            quantities.put(PlanQuantity.ENTRY_DISTANCE, Gradient.constant(distance.mm()));
        } else if (intent instanceof Intent.AngleToSkin angle) {
            quantities.put(PlanQuantity.ANGLE_TO_SKIN, Gradient.constant(Math.toRadians(angle.degrees())));
        }
    }

    private Plan.Source source() {
        return input.intent().isPresent() ? Plan.Source.STATED : Plan.Source.PROPOSED;
    }

    private InPlanePlan.Choices choices(InPlaneScene<Gradient> scene, EntryLimits limits, EntryChoice choice) {
        PlanTable table = new PlanTable(scene, limits, inputs.numbers());
        boolean any = !choice.best().isEmpty();
        return new InPlanePlan.Choices(
                scene.midpointKnown() ? choice.feasible().parts() : List.of(),
                any ? Optional.of(table.row(new Decision.Entry(choice.best().greatest()))) : Optional.empty(),
                any ? Optional.of(table.row(new Decision.Entry(choice.best().least()))) : Optional.empty(),
                table.alternatives());
    }

    private List<PlanNote> notes(double degrees) {
        Constraints.Band band = input.constraints().limits().angleBand();
        List<PlanNote> notes = new ArrayList<>();
        if (degrees < band.lowDeg() - Angles.ROUNDING_DEG) {
            notes.add(PlanNote.SHALLOWER_THAN_BAND);
        } else if (degrees > band.highDeg() + Angles.ROUNDING_DEG) {
            notes.add(PlanNote.STEEPER_THAN_BAND);
        }
        notes.addAll(markNotes());
        return notes;
    }

    private List<PlanNote> markNotes() {
        List<PlanNote> notes = new ArrayList<>();
        if (input.marks().hazards().isEmpty()) {
            notes.add(PlanNote.NO_HAZARDS_MARKED);
        }
        if (input.marks().nerves().isEmpty()) {
            notes.add(PlanNote.NO_NERVE_MARKED);
        }
        return notes;
    }

    private Plan.Judgement judgement(
            List<Limit> binding, List<Limit> unchecked, List<PlanNote> notes, MarkedFrame<Gradient> frame) {
        List<Doubt> doubts = new ArrayList<>();
        if (frame.skinAssumed()) {
            doubts.add(Doubt.SKIN_ASSUMED);
        }
        if (frame.midpointOffSkin(input.probe())) {
            doubts.add(Doubt.MIDPOINT_OFF_SKIN);
        }
        doubts.addAll(frame.scaleDoubts());
        List<Assumption> assumptions = new ArrayList<>(Assumed.inPlane(input.probe()));
        assumptions.addAll(frame.scaleAssumptions());
        return new Plan.Judgement(binding, unchecked, notes, assumptions, doubts);
    }
}
