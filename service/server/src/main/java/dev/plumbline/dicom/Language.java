// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.Locale;

/** TID 1204 Language of Content Item and Descendants. */
final class Language {
    private Language() {}

    /** English as written in the installation's country. */
    static ContentItem item(Installation installation) {
        String country = new Locale("", installation.country()).getDisplayCountry(Locale.ENGLISH);
        return withoutCountry()
                .with(ContentItem.code(
                        Relation.HAS_CONCEPT_MOD,
                        Concepts.COUNTRY,
                        new Code(installation.country(), "ISO3166_1", country)));
    }

    /** English alone: a key object selection may not say more of a code (A.35.4.3.1.2). */
    static ContentItem withoutCountry() {
        return ContentItem.code(Relation.HAS_CONCEPT_MOD, Concepts.LANGUAGE, Codes.of("RFC5646", "en"));
    }
}
