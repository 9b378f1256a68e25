// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.procedure.Laterality;
import dev.plumbline.record.Context;
import java.util.List;
import java.util.Optional;

/** TID 1501 rows 6 and 7: the nerve, plexus or plane that the block is at, and the side; the midline has no laterality. */
final class FindingSite {
    private FindingSite() {}

    /** Empty where the case names no block. */
    static List<ContentItem> of(Context context) {
        return Blocks.of(context)
                .map(block -> ContentItem.code(Relation.HAS_CONCEPT_MOD, Concepts.FINDING_SITE, Blocks.site(block))
                        .with(laterality(context).stream().toList()))
                .stream()
                .toList();
    }

    static Optional<ContentItem> laterality(Context context) {
        return context.laterality()
                .filter(side -> side != Laterality.MIDLINE)
                .map(side -> ContentItem.code(
                        Relation.HAS_CONCEPT_MOD, Concepts.LATERALITY, Codes.ofWord("laterality", side.word())));
    }
}
