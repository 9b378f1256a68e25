// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * How much a site lets in.
 *
 * @param objectBytes the largest object; as large as there can be where empty
 * @param httpDailyBytes from all who send over HTTP together; any number where empty
 */
public record IntakeLimits(OptionalLong objectBytes, OptionalLong httpDailyBytes) {
    /** Whatever fits. */
    public static final IntakeLimits NONE = new IntakeLimits(OptionalLong.empty(), OptionalLong.empty());

    static final String[] FIELDS = {"objectMegabytes", "httpDailyMegabytes"};

    /** The largest object there can be is a little more: 4 GiB less one byte. */
    private static final int MOST_OBJECT = 4_294;

    /** A petabyte a day. */
    private static final int MOST_DAILY = 1_000_000_000;

    private static final long MEGABYTE = 1_000_000;

    static IntakeLimits read(Optional<SiteObject> intake) {
        return intake.map(fields -> new IntakeLimits(
                        megabytes(fields, "objectMegabytes", MOST_OBJECT), daily(fields, "httpDailyMegabytes")))
                .orElse(NONE);
    }

    static OptionalLong daily(SiteObject object, String field) {
        return megabytes(object, field, MOST_DAILY);
    }

    private static OptionalLong megabytes(SiteObject object, String field, int most) {
        Optional<Integer> stated = object.optionalWhole(field);
        if (stated.isEmpty()) {
            return OptionalLong.empty();
        }
        if (stated.get() < 1 || stated.get() > most) {
            throw new Refusal(new Problem.InvalidValue(
                    object.at(field), "This must be 1 to " + most + " MB.", "Give 1 to " + most + "."));
        }
        return OptionalLong.of(stated.get() * MEGABYTE);
    }

    /** As it is stated, in megabytes; null where it is not. */
    static void put(ObjectNode node, String field, OptionalLong bytes) {
        bytes.ifPresentOrElse(stated -> node.put(field, stated / MEGABYTE), () -> node.putNull(field));
    }
}
