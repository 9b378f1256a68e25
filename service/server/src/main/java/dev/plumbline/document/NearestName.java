// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** The known name that a mistyped one most likely stands for. */
public final class NearestName {
    private NearestName() {}

    /**
     * The name with the fewest edits, case ignored; empty when that takes edits for more than half of the longer one, as
     * such a name would send the reader astray.
     */
    public static Optional<String> of(String typed, Collection<String> known) {
        return known.stream()
                .min(Comparator.comparingInt(name -> edits(typed, name)))
                .filter(name -> 2 * edits(typed, name) <= Math.max(typed.length(), name.length()));
    }

    /**
     * Insertions, deletions and replacements that turn one word into the other. Source: Levenshtein, "Binary codes capable
     * of correcting deletions, insertions, and reversals", Soviet Physics Doklady 10 (1966) 707-710 (cited from memory).
     */
    static int edits(String from, String to) {
        String a = from.toLowerCase(Locale.ROOT);
        String b = to.toLowerCase(Locale.ROOT);
        int[] above = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            above[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] row = new int[b.length() + 1];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int replaced = above[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(replaced, 1 + Math.min(above[j], row[j - 1]));
            }
            above = row;
        }
        return above[b.length()];
    }
}
