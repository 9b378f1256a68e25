// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Measured;
import dev.plumbline.dicom.ItemValue.Numeric;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** A measured number says how uncertain it is, and a deviation is judged as its own number and uncertainty have it. */
final class EvaluationRules {
    /** Read off the drawing itself: they say how large something was drawn, and measure nothing. */
    private static final Set<String> DRAWN = Set.of("Q-ROW", "Q-PATHSHOWN", "Q-DIAMETER");

    private final Findings findings;

    EvaluationRules(Findings findings) {
        this.findings = findings;
    }

    void check(List<ReadGroup> groups) {
        for (ReadGroup group : groups) {
            group.richNumbers().forEach(this::uncertain);
            if (group.is(Concepts.OBSERVATION)) {
                Stream.concat(
                                ObservationGroup.DEVIATIONS_IN_PLANE.stream(),
                                ObservationGroup.DEVIATIONS_OUT_OF_PLANE.stream())
                        .distinct()
                        .forEach(row -> judged(group, row));
            }
        }
    }

    private void uncertain(ContentItem number) {
        boolean wanted = number.codeOf(Concepts.EQUIVALENT_MEANING)
                .filter(exact -> !DRAWN.contains(exact.value()))
                .isPresent();
        if (wanted && measured(number).isPresent() && expanded(number).isEmpty()) {
            findings.at(number, "has a value and no uncertainty (TID 310 row 5)");
        }
    }

    private void judged(ReadGroup group, ObservationGroup.DeviationRow row) {
        Optional<Boolean> larger = group.number(Quantity.deviation(row.measurand()))
                .flatMap(number -> measured(number)
                        .flatMap(value -> expanded(number).map(u -> Math.abs(value.value()) > u.value())));
        Optional<Boolean> said = group.item()
                .codeOf(Codes.own(row.judgedAs()))
                .flatMap(code -> Codes.wordOf("evaluations", code))
                .map(Boolean::valueOf);
        if (!said.equals(larger)) {
            findings.at(
                    group.item(),
                    Codes.own(row.judgedAs()) + " says " + words(said) + ", the number and its uncertainty say "
                            + words(larger));
        }
    }

    private static String words(Optional<Boolean> larger) {
        return larger.map(yes -> yes ? "larger than the uncertainty" : "within the uncertainty")
                .orElse("nothing");
    }

    private static Optional<Measured> measured(ContentItem number) {
        return number.value() instanceof Numeric numeric ? numeric.measured() : Optional.empty();
    }

    private static Optional<Measured> expanded(ContentItem number) {
        return number.first(Concepts.UNCERTAINTY).flatMap(EvaluationRules::measured);
    }
}
