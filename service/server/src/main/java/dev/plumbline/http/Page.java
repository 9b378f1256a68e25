// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import java.util.Optional;

/** Which rows of a list are wanted. */
record Page(int limit, int offset) {
    private static final int USUAL = 100;
    private static final int MOST = 1000;

    static Page of(Context ctx) {
        return new Page(Math.min(number(ctx, "limit", USUAL), MOST), number(ctx, "offset", 0));
    }

    private static int number(Context ctx, String name, int absent) {
        String text = Optional.ofNullable(ctx.queryParam(name)).orElse(String.valueOf(absent));
        if (!text.matches("\\d{1,9}")) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The query parameter " + name + " must be a whole number.", "Give 0 or more."));
        }
        return Integer.parseInt(text);
    }
}
