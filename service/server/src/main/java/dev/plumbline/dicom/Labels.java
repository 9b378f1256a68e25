// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.Reading;
import java.util.Locale;
import java.util.Optional;

/** The short words that viewers show beside a line, at most 16 characters each. */
final class Labels {
    private Labels() {}

    /** Such as {@code Plan 33.7°}; the word alone where there is no angle. */
    static String angle(String word, Reading angle) {
        return angle.fold(seen -> String.format(Locale.ROOT, "%s %.1f°", word, seen.value()), notSeen -> word);
    }

    /** Such as {@code 4.5° steeper}; empty without a value. */
    static Optional<String> angleDeviation(Reading deviation) {
        return deviation.fold(
                seen -> Optional.of(words(seen.value(), String.format(Locale.ROOT, "%.1f°", Math.abs(seen.value())))),
                notSeen -> Optional.empty());
    }

    private static String words(double value, String degrees) {
        if (degrees.equals("0.0°")) {
            return "differs 0.0°";
        }
        return degrees + (value > 0 ? " steeper" : " flatter");
    }
}
