// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.deviation;

import dev.plumbline.geometry.CaseInputs;
import dev.plumbline.geometry.Extents;
import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.GradientInputs;
import dev.plumbline.geometry.Orientation;
import dev.plumbline.geometry.Side;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.observation.Observing;
import dev.plumbline.plan.PlanCheck;
import dev.plumbline.plan.PlanInput;
import dev.plumbline.plan.Planning;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Plans, measures and compares one case as one expression over its inputs. */
final class Comparing {
    private Comparing() {}

    static Comparison compare(PlanInput input, List<ObservationInput> observed) {
        check(input, observed);
        CaseInputs<Gradient> inputs =
                new CaseInputs<>(new GradientInputs(), input.uncertainty(), extents(input, observed));
        Planning.Drafted planned = Planning.draft(input, orientation(input, observed), inputs);
        List<Observation> observations = new ArrayList<>();
        List<Deviation> deviations = new ArrayList<>();
        for (int i = 0; i < observed.size(); i++) {
            Observing.Drafted seen = Observing.observe(observed.get(i), pointer(i), planned.draft(), inputs);
            observations.add(seen.observation());
            deviations.add(new Deviation(
                    seen.observation().id(),
                    new DeviationFormulas<>(planned.draft(), seen.draft())
                            .compare()
                            .readings(inputs.numbers())));
        }
        return new Comparison(planned.plan(), observations, deviations);
    }

    /** Observations only tell the side that the needle comes from, and what a scanner's tolerance is applied to. */
    static Comparison plan(PlanInput input, List<ObservationInput> observed) {
        PlanCheck.check(input);
        CaseInputs<Gradient> inputs =
                new CaseInputs<>(new GradientInputs(), input.uncertainty(), extents(input, observed));
        Planning.Drafted planned = Planning.draft(input, orientation(input, observed), inputs);
        return new Comparison(planned.plan(), List.of(), List.of());
    }

    static String pointer(int observation) {
        return "/observations/" + observation;
    }

    static void check(PlanInput input, List<ObservationInput> observed) {
        PlanCheck.check(input);
        for (int i = 0; i < observed.size(); i++) {
            Observing.check(observed.get(i), pointer(i), input.approach());
        }
    }

    static Orientation orientation(PlanInput input, List<ObservationInput> observed) {
        boolean inverted = input.probe().imageInverted().orElse(false);
        Optional<Side> side = observed.stream()
                .map(observation -> Observing.sideOf(observation, inverted))
                .flatMap(Optional::stream)
                .findFirst();
        return Planning.orientation(input, side);
    }

    static Extents extents(PlanInput input, List<ObservationInput> observed) {
        Extents extents = new Extents();
        if (input.uncertainty().scannerTolerance().isPresent()) {
            Planning.addExtents(extents, input);
            for (int i = 0; i < observed.size(); i++) {
                Observing.addExtents(extents, observed.get(i), pointer(i), input);
            }
        }
        return extents;
    }
}
