// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.geometry.Foundation;
import dev.plumbline.geometry.Standing;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.Map;
import java.util.TreeMap;

/** What the figures of one file rest on; each figure names one of these. */
final class Foundations {
    static final String FIELD = "foundations";
    private static final String[] FIELDS = {"standing", "text"};

    private final Map<String, Foundation> byName = new TreeMap<>();

    Foundations(SiteObject root) {
        root.named(FIELD, FIELDS)
                .forEach((name, fields) -> byName.put(
                        name,
                        new Foundation(
                                fields.word("standing", Standing.values(), Standing::word), fields.text("text"))));
    }

    /** The foundation that the field {@code foundation} of an object names. */
    Foundation of(SiteObject fields) {
        String name = fields.text("foundation");
        Foundation found = byName.get(name);
        if (found == null) {
            throw new Refusal(new Problem.InvalidValue(
                    fields.at("foundation"),
                    "The foundation " + name + " is not listed under /" + FIELD + ".",
                    "Name one of " + String.join(", ", byName.keySet()) + ", or list it."));
        }
        return found;
    }
}
