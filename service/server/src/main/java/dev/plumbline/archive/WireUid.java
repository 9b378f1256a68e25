// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.dicom.UidSyntax;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;

/** Unique identifiers as they come from outside: checked before they are used for anything. */
public final class WireUid {
    private WireUid() {}

    /**
     * The text itself where it is a UID.
     *
     * @param what names the place in the message, which never repeats the text
     * @throws Refusal {@link Problem.InvalidValue} where it is none
     */
    public static String require(String text, String what) {
        if (!UidSyntax.holds(text)) {
            throw new Refusal(new Problem.InvalidValue(
                    "", what + " is not a DICOM UID.", "Send digits and dots, at most 64 characters."));
        }
        return text;
    }
}
