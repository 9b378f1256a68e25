// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How the values of a value representation are laid out in a file.
 *
 * @param unit the length is a multiple of this many bytes
 * @param longLength whether explicit encodings give a 32-bit length after two reserved bytes
 */
record ValueForm(int unit, boolean longLength) {
    private static final Map<String, ValueForm> FORMS = Map.ofEntries(
            // Source: DICOM PS3.5, 6.2 (units) and 7.1.2 (the two forms of an explicit length).
            text("AE"),
            text("AS"),
            shortForm("AT", 4),
            text("CS"),
            text("DA"),
            text("DS"),
            text("DT"),
            shortForm("FD", 8),
            shortForm("FL", 4),
            text("IS"),
            text("LO"),
            text("LT"),
            longForm("OB", 2),
            longForm("OD", 8),
            longForm("OF", 4),
            longForm("OL", 4),
            longForm("OV", 8),
            longForm("OW", 2),
            text("PN"),
            text("SH"),
            shortForm("SL", 4),
            longForm("SQ", 2),
            shortForm("SS", 2),
            text("ST"),
            longForm("SV", 8),
            text("TM"),
            longForm("UC", 2),
            text("UI"),
            shortForm("UL", 4),
            longForm("UN", 2),
            longForm("UR", 2),
            shortForm("US", 2),
            longForm("UT", 2),
            longForm("UV", 8));

    /** A value representation by its two letters. */
    record Named(String vr, ValueForm form) {}

    private static final int LETTERS = 26;
    private static final @Nullable Named[] BY_LETTERS = byLetters();

    private static @Nullable Named[] byLetters() {
        @Nullable Named[] all = new Named[LETTERS * LETTERS];
        FORMS.forEach((vr, form) -> all[(vr.charAt(0) - 'A') * LETTERS + vr.charAt(1) - 'A'] = new Named(vr, form));
        return all;
    }

    /** The value representation of two bytes; null for bytes that are none, as this is asked for every element. */
    static @Nullable Named named(int first, int second) {
        boolean letters = 'A' <= first && first <= 'Z' && 'A' <= second && second <= 'Z';
        return letters ? BY_LETTERS[(first - 'A') * LETTERS + second - 'A'] : null;
    }

    static Optional<ValueForm> of(String vr) {
        return Optional.ofNullable(FORMS.get(vr));
    }

    private static Map.Entry<String, ValueForm> text(String vr) {
        return shortForm(vr, 2);
    }

    private static Map.Entry<String, ValueForm> shortForm(String vr, int unit) {
        return Map.entry(vr, new ValueForm(unit, false));
    }

    private static Map.Entry<String, ValueForm> longForm(String vr, int unit) {
        return Map.entry(vr, new ValueForm(unit, true));
    }
}
