// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;

/**
 * Marks that were set several times: the report's coordinates hold the mean, the parameters hold the marks themselves, by
 * their place in the case document or in the observation.
 */
final class Repeats {
    private static final String FIELD = "repeats";

    private Repeats() {}

    /** Takes the repeats of a case's or an observation's marks into its parameters. */
    static void keep(JsonNode stated, ObjectNode parameters) {
        ObjectNode kept = parameters.objectNode();
        collect(stated, "", kept);
        if (!kept.isEmpty()) {
            parameters.set(FIELD, kept);
        }
    }

    /** Puts them back in place of their means. */
    static void restore(ObjectNode read) {
        JsonNode kept = read.remove(FIELD);
        if (kept == null) {
            return;
        }
        for (Map.Entry<String, JsonNode> mark : kept.properties()) {
            if (!mark.getKey().startsWith("/")
                    || !(read.at(JsonPointer.compile(mark.getKey())) instanceof ObjectNode at)) {
                throw Fault.malformed("The algorithm parameters (111002) repeat a mark that the report does not have");
            }
            at.removeAll();
            at.set(FIELD, mark.getValue());
        }
    }

    private static void collect(JsonNode node, String pointer, ObjectNode kept) {
        if (node.has(FIELD)) {
            kept.set(pointer, node.get(FIELD));
        } else if (node.isObject()) {
            node.properties().forEach(field -> collect(field.getValue(), pointer + "/" + field.getKey(), kept));
        } else {
            for (int i = 0; i < node.size(); i++) {
                collect(node.get(i), pointer + "/" + i, kept);
            }
        }
    }
}
