// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.core.io.schubfach.DoubleToDecimal;
import java.math.BigDecimal;
import java.math.MathContext;

/**
 * The shortest decimal that reads back as the same double, laid out as ECMAScript does.
 *
 * <p>Source: RFC 8785, 3.2.2.3, which takes ECMA-262 Number::toString. Check values: its Appendix B, {@code
 * external/rfc8785-numbers.csv}.
 */
final class CanonicalNumber {
    private static final int LARGEST_PLAIN_POINT = 21;
    private static final int SMALLEST_PLAIN_POINT = -6;

    private CanonicalNumber() {}

    static String text(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("JSON has no number for " + value);
        }
        if (value == 0) {
            return "0";
        }
        BigDecimal decimal = shortest(value);
        String digits = decimal.unscaledValue().abs().toString();
        int point = digits.length() - decimal.scale(); // the decimal point stands after so many digits
        String sign = value < 0 ? "-" : "";
        return sign
                + (SMALLEST_PLAIN_POINT < point && point <= LARGEST_PLAIN_POINT
                        ? decimal.abs().toPlainString()
                        : scientific(digits, point - 1));
    }

    /** JDK 17 and the writer used here give two digits where one would do (4.9E-324), so one is tried first. */
    private static BigDecimal shortest(double value) {
        BigDecimal decimal = new BigDecimal(DoubleToDecimal.toString(value)).stripTrailingZeros();
        BigDecimal oneDigit = decimal.round(new MathContext(1));
        return oneDigit.doubleValue() == value ? oneDigit.stripTrailingZeros() : decimal;
    }

    private static String scientific(String digits, int exponent) {
        String mantissa = digits.length() == 1 ? digits : digits.charAt(0) + "." + digits.substring(1);
        return mantissa + "e" + (exponent < 0 ? "-" : "+") + Math.abs(exponent);
    }
}
