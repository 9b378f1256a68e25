// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomJson;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;

/** What of an object's attributes the index keeps: top level, standard, neither sequences nor binary. */
final class IndexedAttributes {
    private static final int LONGEST_TEXT = 1024;

    private IndexedAttributes() {}

    static ObjectNode of(DataSet header) {
        ObjectNode attributes = DicomJson.of(header, "");
        List<String> left = new ArrayList<>();
        for (Iterator<String> names = attributes.fieldNames(); names.hasNext(); ) {
            String name = names.next();
            if (!kept(name, attributes.path(name))) {
                left.add(name);
            }
        }
        return attributes.remove(left);
    }

    private static boolean kept(String name, JsonNode attribute) {
        boolean standard = Integer.parseInt(name.substring(0, 4), 16) % 2 == 0;
        boolean plain = !attribute.has("BulkDataURI") && !attribute.has("InlineBinary");
        return standard
                && plain
                && !"SQ".equals(attribute.path("vr").asText())
                && attribute.toString().length() <= LONGEST_TEXT;
    }

    /** The first value of an attribute as text; "" where there is none. A name with all its groups. */
    static String text(ObjectNode attributes, int tag) {
        JsonNode value = attributes.path(DicomJson.name(tag)).path("Value").path(0);
        if (!value.isObject()) {
            return value.isNull() ? "" : value.asText();
        }
        String ideographic = value.path("Ideographic").asText();
        String phonetic = value.path("Phonetic").asText();
        String groups = value.path("Alphabetic").asText() + "=" + ideographic + "=" + phonetic;
        return groups.replaceAll("=+$", "");
    }
}
