// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Unit;
import java.util.Locale;

/** Numbers, reasons and limits as a person reads them. */
final class Words {
    static final String NONE = "-";

    private Words() {}

    /** One decimal with unit and expanded uncertainty, or the reason why there is no number. */
    static String quantity(Reading reading, Measurand measurand) {
        return reading.fold(
                seen -> number(seen.value()) + unit(measurand) + plusMinus(seen),
                why -> "(" + spelledOut(why.reason().word()) + ")");
    }

    /** As {@link #quantity}, with its sign. */
    static String difference(Reading reading, Measurand measurand) {
        return reading.fold(
                seen -> (seen.value() > 0 && !number(seen.value()).equals("0.0") ? "+" : "")
                        + quantity(seen, measurand),
                why -> quantity(why, measurand));
    }

    /** Without unit and uncertainty, for columns whose head names the unit. */
    static String bare(Reading reading) {
        return reading.fold(seen -> number(seen.value()), why -> NONE);
    }

    /** What a difference means, in the product's own words. */
    static String meaning(Reading reading) {
        return reading.fold(
                seen -> seen.exceedsUncertainty()
                        ? "larger than the measurement's uncertainty; not by itself a fault"
                        : "no difference that this measurement could show",
                why -> "");
    }

    private static String plusMinus(Reading.Seen seen) {
        return seen.standardUncertainty() == 0 ? "" : " \u00b1 " + number(seen.expandedUncertainty());
    }

    private static String unit(Measurand measurand) {
        return measurand.unit() == Unit.DEGREE ? "\u00b0" : measurand.unit() == Unit.MILLIMETRE ? " mm" : "";
    }

    static String number(double value) {
        String text = String.format(Locale.ROOT, "%.1f", value);
        return text.equals("-0.0") ? "0.0" : text;
    }

    /** {@code shaftParallelToSkin} as "shaft parallel to skin". */
    static String spelledOut(String camelCase) {
        return camelCase.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
    }

    static String firstUpper(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
