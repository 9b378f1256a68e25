// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** TID 1500 rows 12 and 14: what was amended and why, then the impression of who signs; not there when empty. */
final class Evaluations {
    private Evaluations() {}

    static Optional<ContentItem> item(RecordSource source) {
        List<ContentItem> texts = new ArrayList<>();
        source.revision()
                .amendment()
                .ifPresent(amendment ->
                        texts.add(ContentItem.text(Relation.CONTAINS, Concepts.COMMENT, amendment.text())));
        source.revision()
                .document()
                .bedside()
                .impression()
                .ifPresent(words -> texts.add(ContentItem.text(Relation.CONTAINS, Concepts.IMPRESSION, words)));
        return texts.isEmpty()
                ? Optional.empty()
                : Optional.of(ContentItem.container(Concepts.EVALUATIONS).with(texts));
    }

    /** What the report says of its amendment, as written. */
    static Optional<String> amendment(ContentItem root) {
        return root.first(Concepts.EVALUATIONS).flatMap(container -> container.textOf(Concepts.COMMENT));
    }
}
