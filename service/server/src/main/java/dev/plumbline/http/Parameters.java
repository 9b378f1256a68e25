// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import io.javalin.http.Context;
import java.util.HashMap;
import java.util.Map;

/** The query of an address, of each name the first value. */
final class Parameters {
    private Parameters() {}

    static Map<String, String> of(Context ctx) {
        Map<String, String> parameters = new HashMap<>();
        ctx.queryParamMap().forEach((name, values) -> parameters.put(name, values.get(0)));
        return parameters;
    }
}
