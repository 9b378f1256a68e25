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

    static final BigDecimal THOUSAND = BigDecimal.valueOf(1000);

    private Amounts() {}

    static Refusal refused(String detail, String remedy) {
        return new Refusal(new Problem.InvalidValue("", detail, remedy));
    }

    /** Text of a number without exponent or idle zeros. */
    static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }
}
