// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.review.BlandAltman;
import dev.plumbline.review.ConfidenceInterval;
import dev.plumbline.review.IntraclassCorrelation;
import dev.plumbline.review.TechnicalError;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Agreement of observers in words: each number with its interval, its form and what it is not. */
final class AgreementWords {
    private AgreementWords() {}

    static String of(Agreement agreement) {
        List<String> parts = new ArrayList<>();
        parts.add(agreement.ratings().table().subjects() + " subjects, "
                + agreement.ratings().observers().size() + " observers. All in the unit of the table.");
        agreement.pairs().forEach(pair -> parts.add(pair(pair)));
        parts.add(correlations(agreement.correlations()));
        parts.add(technicalError(agreement.technicalError()));
        return String.join("\n\n", parts);
    }

    private static String pair(Agreement.Pair pair) {
        BlandAltman limits = pair.limits();
        TextTable table = new TextTable()
                .row(List.of("Limits of agreement, " + pair.first() + " - " + pair.second(), "", ""))
                .row(List.of("mean difference", number(limits.bias()), interval(limits.biasInterval())))
                .row(List.of("standard deviation", number(limits.sd()), ""))
                .row(List.of("lower limit", number(limits.lowerLimit()), interval(limits.lowerInterval())))
                .row(List.of("upper limit", number(limits.upperLimit()), interval(limits.upperInterval())));
        return table.text() + "\n"
                + Terminal.wrapped("The limits lie " + plain(limits.multiple())
                        + " standard deviations from the mean difference and hold most differences if these are roughly"
                        + " normal and do not grow with what is measured; neither was checked here ("
                        + limits.biasInterval().method() + ").");
    }

    private static String correlations(List<IntraclassCorrelation> correlations) {
        TextTable table = new TextTable().row(List.of("Intraclass correlation", "", ""));
        for (IntraclassCorrelation one : correlations) {
            String value = one.value().isPresent() ? number(one.value().getAsDouble()) : "no value";
            String interval = one.interval().map(AgreementWords::interval).orElse("(no interval)");
            table.row(List.of(one.form().word() + " " + one.form().meaning(), value, interval));
        }
        return table.text() + "\n"
                + Terminal.wrapped(
                        "The forms answer different questions and differ widely on the same table: name the form"
                                + " with the number (Shrout and Fleiss 1979).");
    }

    private static String technicalError(TechnicalError error) {
        return Terminal.wrapped(
                "Technical error of one measurement " + number(error.value()) + "; two further measurements"
                        + " of one subject differ by less than " + number(error.repeatability())
                        + " in 95 of 100 cases, if differences are roughly normal. A constant difference between observers is part"
                        + " of it.");
    }

    private static String interval(ConfidenceInterval interval) {
        return number(interval.low()) + " to " + number(interval.high()) + " (" + plain(100 * interval.level())
                + " % interval)";
    }

    /** Four significant digits. */
    private static String number(double value) {
        if (value == 0) {
            return "0";
        }
        int decimals = Math.max(0, Math.min(9, 3 - (int) Math.floor(Math.log10(Math.abs(value)))));
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    private static String plain(double value) {
        return value == Math.rint(value)
                ? String.valueOf((long) value)
                : String.format(Locale.ROOT, "%.6g", value).replaceAll("0+$", "");
    }
}
