// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.needle;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What is stated about the needle.
 *
 * @param gauge legacy size designation; fixes the outer diameter (ISO 7864:2016, 3.1)
 * @param lengthMm of the shaft from hub to tip
 * @param wish what a needle chosen from a catalogue should be like
 */
public record Needle(
        OptionalInt gauge, OptionalDouble lengthMm, Optional<Boolean> echogenic, Optional<NeedleWish> wish) {
    public static final Needle NOTHING_STATED =
            new Needle(OptionalInt.empty(), OptionalDouble.empty(), Optional.empty());

    /** Without a wish. */
    public Needle(OptionalInt gauge, OptionalDouble lengthMm, Optional<Boolean> echogenic) {
        this(gauge, lengthMm, echogenic, Optional.empty());
    }
}
