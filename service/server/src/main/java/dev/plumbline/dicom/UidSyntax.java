// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.regex.Pattern;

/** What may stand as a unique identifier: the only wire text that is ever used as a key. Source: DICOM PS3.5, 9.1. */
public final class UidSyntax {
    private static final Pattern DOTTED_NUMBERS = Pattern.compile("[0-9]+(\\.[0-9]+)*");
    private static final int MAX_LENGTH = 64;

    private UidSyntax() {}

    /** Leading zeros in a component are let through: objects of real scanners have them. */
    public static boolean holds(String uid) {
        return uid.length() <= MAX_LENGTH && DOTTED_NUMBERS.matcher(uid).matches();
    }
}
