// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.Locale;

/** TID 1204 Language of Content Item and Descendants. */
final class Language {
    private Language() {}

    /** English as written in the installation's country. */
    static ContentItem item(Installation installation) {
        String country = new Locale("", installation.country()).getDisplayCountry(Locale.ENGLISH);
        return ContentItem.code(Relation.HAS_CONCEPT_MOD, Concepts.LANGUAGE, Codes.of("RFC5646", "en"))
                .with(ContentItem.code(
                        Relation.HAS_CONCEPT_MOD,
                        Concepts.COUNTRY,
                        new Code(installation.country(), "ISO3166_1", country)));
    }
}
