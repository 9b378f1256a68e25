// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.List;

/** TID 4019 Algorithm Identification, rows 1 to 3: which computation, and everything it was given that is not a mark. */
final class Algorithm {
    private Algorithm() {}

    /** @param parameters canonical JSON in the names of the case document */
    static List<ContentItem> items(String name, String version, String parameters) {
        return List.of(
                ContentItem.text(Relation.HAS_CONCEPT_MOD, Concepts.ALGORITHM_NAME, name),
                ContentItem.text(Relation.HAS_CONCEPT_MOD, Concepts.ALGORITHM_VERSION, version),
                ContentItem.text(Relation.HAS_CONCEPT_MOD, Concepts.ALGORITHM_PARAMETERS, parameters));
    }
}
