// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.util.List;

/**
 * One line of a search answer: a study, a series or an instance.
 *
 * @param representative the object first received of what the line stands for
 */
public record Found(HeldObject representative, Contents contents) {
    /** What a study or series contains. */
    public record Contents(int series, int instances, List<String> modalities, List<String> sopClasses) {
        public Contents {
            modalities = List.copyOf(modalities);
            sopClasses = List.copyOf(sopClasses);
        }
    }
}
