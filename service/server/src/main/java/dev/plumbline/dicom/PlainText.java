// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.Set;

/** Which value representations are text, and which of them may hold several values. Source: DICOM PS3.5 6.2 and 6.4. */
final class PlainText {
    private static final Set<String> SINGLE = Set.of("LT", "ST", "UT");
    private static final Set<String> MULTIPLE =
            Set.of("AE", "AS", "CS", "DA", "DS", "DT", "IS", "LO", "PN", "SH", "TM", "UI");

    private PlainText() {}

    static boolean knows(String vr) {
        return SINGLE.contains(vr) || MULTIPLE.contains(vr);
    }

    static boolean isMultiple(String vr) {
        return MULTIPLE.contains(vr);
    }
}
