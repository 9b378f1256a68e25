// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Measured;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;

/** Numbers as Decimal Strings: 6 significant digits, at most 16 characters, DICOM PS3.5 6.2 (DS). */
final class DecimalText {
    private static final MathContext SIX_DIGITS = new MathContext(6, RoundingMode.HALF_EVEN);
    private static final int LONGEST = 16;

    private DecimalText() {}

    /** The number with its exact binary value beside it wherever the text rounds it. */
    static Measured measured(double value, Code unit) {
        String decimal = of(value);
        boolean rounded = Double.parseDouble(decimal) != value;
        return new Measured(decimal, rounded ? Optional.of(value) : Optional.empty(), unit);
    }

    /** A decimal as a person stated it: figure by figure where 16 characters hold it, else as {@link #measured}. */
    static Measured stated(BigDecimal value, Code unit) {
        String plain = value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
        return plain.length() <= LONGEST
                ? new Measured(plain, Optional.empty(), unit)
                : measured(value.doubleValue(), unit);
    }

    static String of(double value) {
        if (value == 0) {
            return "0";
        }
        BigDecimal rounded = new BigDecimal(value).round(SIX_DIGITS).stripTrailingZeros();
        String plain = rounded.toPlainString();
        return plain.length() <= LONGEST ? plain : rounded.toString();
    }
}
