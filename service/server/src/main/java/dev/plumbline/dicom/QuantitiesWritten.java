// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.Measurand;
import java.util.List;
import java.util.stream.Stream;

/** The numbers that a plan or an observation always writes, with a value or with the reason why there is none. */
final class QuantitiesWritten {
    private QuantitiesWritten() {}

    static void check(ReadGroup group, Findings findings) {
        wanted(group)
                .filter(quantity -> group.number(quantity).isEmpty())
                .forEach(quantity -> findings.at(group.item(), "has no number for " + quantity.code()));
    }

    private static Stream<Quantity> wanted(ReadGroup group) {
        if (group.is(Concepts.PLAN)) {
            boolean inPlane = group.parameters().path("approach").asText().equals("inPlane");
            return quantities((inPlane ? PlanGroup.IN_PLANE : PlanGroup.OUT_OF_PLANE)
                    .stream().map(PlanGroup.Row::measurand));
        }
        if (group.is(Concepts.OBSERVATION)) {
            boolean inPlane = group.number(Quantity.of("Q-CROSSDEPTH")).isEmpty();
            return Stream.concat(
                    quantities((inPlane ? ObservationGroup.IN_PLANE : ObservationGroup.OUT_OF_PLANE)
                            .stream().map(ObservationGroup.Row::measurand)),
                    deviations(
                            inPlane ? ObservationGroup.DEVIATIONS_IN_PLANE : ObservationGroup.DEVIATIONS_OUT_OF_PLANE));
        }
        if (group.is(Concepts.HAZARD)) {
            return Stream.of("Q-DIAMETER", "Q-CLEARANCE").map(Quantity::of);
        }
        if (group.is(Concepts.NERVE)) {
            return Stream.of("Q-DIAMETER", "Q-NERVECLR", "Q-NERVECLROV").map(Quantity::of);
        }
        return Stream.of();
    }

    private static Stream<Quantity> quantities(Stream<? extends Measurand> measurands) {
        return measurands.map(Quantity::of);
    }

    private static Stream<Quantity> deviations(List<ObservationGroup.DeviationRow> rows) {
        return rows.stream().map(row -> Quantity.deviation(row.measurand()));
    }
}
