// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How the values of a value representation are laid out in a file.
 *
 * @param vr its two letters
 * @param unit the length is a multiple of this many bytes
 * @param longLength whether explicit encodings give a 32-bit length after two reserved bytes
 * @param text what it holds as text
 */
record ValueForm(String vr, int unit, boolean longLength, Text text) {
    /** Whether values are text, and whether several may stand in one, backslashes between. Source: DICOM PS3.5, 6.2 and 6.4. */
    enum Text {
        NONE,
        ONE,
        SEVERAL
    }

    private static final int LETTERS = 26;
    private static final @Nullable ValueForm[] BY_LETTERS = byLetters(List.of(
            // Source: DICOM PS3.5, 6.2 (units) and 7.1.2 (the two forms of an explicit length).
            texts("AE"),
            texts("AS"),
            shortForm("AT", 4),
            texts("CS"),
            texts("DA"),
            texts("DS"),
            texts("DT"),
            shortForm("FD", 8),
            shortForm("FL", 4),
            texts("IS"),
            texts("LO"),
            new ValueForm("LT", 2, false, Text.ONE),
            longForm("OB", 2),
            longForm("OD", 8),
            longForm("OF", 4),
            longForm("OL", 4),
            longForm("OV", 8),
            longForm("OW", 2),
            texts("PN"),
            texts("SH"),
            shortForm("SL", 4),
            longForm("SQ", 2),
            shortForm("SS", 2),
            new ValueForm("ST", 2, false, Text.ONE),
            longForm("SV", 8),
            texts("TM"),
            longForm("UC", 2), // text too, of which the toolkit has its own idea
            texts("UI"),
            shortForm("UL", 4),
            longForm("UN", 2),
            longForm("UR", 2),
            shortForm("US", 2),
            new ValueForm("UT", 2, true, Text.ONE),
            longForm("UV", 8)));

    private static @Nullable ValueForm[] byLetters(List<ValueForm> forms) {
        @Nullable ValueForm[] all = new ValueForm[LETTERS * LETTERS];
        for (ValueForm form : forms) {
            all[place(form.vr.charAt(0), form.vr.charAt(1))] = form;
        }
        return all;
    }

    private static int place(int first, int second) {
        return (first - 'A') * LETTERS + second - 'A';
    }

    /** By the two bytes of the letters in the file; empty for bytes that are none. */
    static Optional<ValueForm> of(int first, int second) {
        boolean letters = 'A' <= first && first <= 'Z' && 'A' <= second && second <= 'Z';
        return letters ? Optional.ofNullable(BY_LETTERS[place(first, second)]) : Optional.empty();
    }

    static Optional<ValueForm> of(String vr) {
        return vr.length() == 2 ? of(vr.charAt(0), vr.charAt(1)) : Optional.empty();
    }

    private static ValueForm texts(String vr) {
        return new ValueForm(vr, 2, false, Text.SEVERAL);
    }

    private static ValueForm shortForm(String vr, int unit) {
        return new ValueForm(vr, unit, false, Text.NONE);
    }

    private static ValueForm longForm(String vr, int unit) {
        return new ValueForm(vr, unit, true, Text.NONE);
    }
}
