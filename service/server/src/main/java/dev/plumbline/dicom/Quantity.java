// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.Measurand;
import java.util.Optional;

/**
 * What a number in a record is: its exact quantity, the generic concept that other readers know, and its unit; all from
 * the code master file.
 */
record Quantity(Code code, Code concept, Code unit) {
    private static final String PLANNED_OR_OBSERVED = "quantities";
    private static final String DEVIATIONS = "deviations";

    static Quantity of(String code) {
        Codes.Entry entry = Codes.entry(Codes.OWN_SCHEME, code);
        return new Quantity(entry.code(), Codes.named(required(entry, "concept")), Codes.ucum(required(entry, "unit")));
    }

    /** Of a code that stands for a quantity or a deviation; empty for any other. */
    static Optional<Quantity> known(Code code) {
        return Codes.known(code)
                .filter(entry ->
                        entry.set().equals(PLANNED_OR_OBSERVED) || entry.set().equals(DEVIATIONS))
                .map(entry -> of(entry.code().value()));
    }

    /** Of a plan's or an observation's measurand. */
    static Quantity of(Measurand measurand) {
        return of(Codes.ofWord(PLANNED_OR_OBSERVED, measurand.field()).value());
    }

    static Quantity deviation(Measurand measurand) {
        return of(Codes.ofWord(DEVIATIONS, measurand.field()).value());
    }

    boolean isDeviation() {
        return Codes.entry(Codes.OWN_SCHEME, code.value()).set().equals(DEVIATIONS);
    }

    private static String required(Codes.Entry entry, String field) {
        return entry.text(field)
                .orElseThrow(() -> new IllegalStateException(entry.code() + " has no " + field + " in codes.json."));
    }
}
