// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Unit;
import dev.plumbline.plan.Limit;
import java.util.Locale;
import java.util.Optional;

/** Numbers and the program's own one-word names as people read them. */
final class Wording {
    /** Names that people marked are shown up to this length. */
    private static final int LONGEST_NAME = 28;

    private Wording() {}

    static String mm(double value) {
        return number(value, 1) + " mm";
    }

    /** With its unit and one decimal, which is finer than any mark on an image. */
    static String value(double value, Measurand measurand) {
        return number(value, 1) + unit(measurand);
    }

    /** Without "mm", for columns whose lines name the unit. */
    static String bare(double value, Measurand measurand) {
        return number(value, 1) + (measurand.unit() == Unit.DEGREE ? "\u00b0" : "");
    }

    static String signed(double value, Measurand measurand) {
        String text = bare(value, measurand);
        return text.startsWith("-") || number(value, 1).equals("0.0") ? text : "+" + text;
    }

    static String unit(Measurand measurand) {
        return measurand.unit() == Unit.DEGREE ? "\u00b0" : measurand.unit() == Unit.MILLIMETRE ? " mm" : "";
    }

    static String number(double value, int decimals) {
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return text.matches("-0\\.?0*") ? text.substring(1) : text;
    }

    static Optional<String> value(Reading reading, Measurand measurand) {
        return reading.fold(seen -> Optional.of(value(seen.value(), measurand)), why -> Optional.empty());
    }

    /** {@code tipNotConfirmed} as "tip not confirmed". */
    static String spelledOut(String camelCase) {
        return camelCase.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
    }

    /** A limit with its structure: "lead-in", "hazard artery". */
    static String limit(Limit limit) {
        String word = limit.kind() == Limit.Kind.LEAD_IN
                ? "lead-in"
                : spelledOut(limit.kind().word());
        return word + limit.structure().map(name -> " " + name(name)).orElse("");
    }

    /** A name as marked: one line, no control characters, not longer than a label can be. */
    static String name(String marked) {
        String line =
                marked.replaceAll("[\\p{Cntrl}\\p{Cs}\\uFFFE\\uFFFF]+", " ").strip();
        int length = line.codePointCount(0, line.length());
        return length <= LONGEST_NAME
                ? line
                : line.substring(0, line.offsetByCodePoints(0, LONGEST_NAME - 1)) + "\u2026";
    }

    static String firstUpper(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
