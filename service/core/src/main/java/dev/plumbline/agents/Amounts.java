// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.math.BigDecimal;
import java.math.MathContext;

/** Rules that every amount shares: sums and products exact, quotients with 34 digits, impossible numbers refused. */
final class Amounts {
    /** Quotients do not end; more digits than any syringe or balance has. */
    static final MathContext DIVISION = MathContext.DECIMAL128;

    private static final int MOST_DIGITS = 200;

    static final BigDecimal THOUSAND = BigDecimal.valueOf(1000);

    private Amounts() {}

    static Refusal refused(String detail, String remedy) {
        return new Refusal(new Problem.InvalidValue("", detail, remedy));
    }

    /**
     * Refuses a number with more digits than any arithmetic here makes of sensible ones. Such a number is an attack or a slip,
     * and its sums would fill the memory.
     */
    static void checkDigits(BigDecimal value) {
        if (!hasSensibleDigits(value)) {
            throw refused("A number with so many digits is no amount.", "Give an ordinary decimal number.");
        }
    }

    private static boolean hasSensibleDigits(BigDecimal value) {
        return Math.abs((long) value.scale()) <= MOST_DIGITS && value.precision() <= MOST_DIGITS;
    }

    /** The same number without idle zeros and without an exponent. */
    static BigDecimal shortest(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    /** Text of a number without exponent or idle zeros, where that is short. */
    static String plain(BigDecimal value) {
        if (value.signum() == 0) {
            return "0";
        }
        return hasSensibleDigits(value) ? value.stripTrailingZeros().toPlainString() : value.toString();
    }
}
