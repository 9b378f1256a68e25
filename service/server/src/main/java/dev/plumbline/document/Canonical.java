// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Map;
import java.util.TreeMap;

/**
 * One text for one content: nulls, empty arrays and empty objects dropped, keys sorted, no spaces, shortest numbers.
 *
 * <p>Source: RFC 8785 (JSON Canonicalization Scheme) for order (3.2.3), strings (3.2.2.2) and numbers (3.2.2.3); dropping
 * what is empty is ours, because an empty field says nothing.
 */
public final class Canonical {
    private Canonical() {}

    /** The canonical text; a number must be finite. */
    public static String text(JsonNode json) {
        StringBuilder out = new StringBuilder();
        write(json, out);
        return out.toString();
    }

    private static boolean saysNothing(JsonNode json) {
        if (json.isContainerNode()) {
            for (JsonNode child : json) {
                if (json.isArray() || !saysNothing(child)) {
                    return false;
                }
            }
            return true;
        }
        return json.isNull() || json.isMissingNode();
    }

    private static void write(JsonNode json, StringBuilder out) {
        if (json.isObject()) {
            object(json, out);
        } else if (json.isArray()) {
            array(json, out);
        } else if (json.isTextual()) {
            string(json.textValue(), out);
        } else if (json.isNumber()) {
            out.append(CanonicalNumber.text(json.doubleValue()));
        } else {
            out.append(json.asText()); // true, false, null
        }
    }

    private static void object(JsonNode json, StringBuilder out) {
        Map<String, JsonNode> sorted = new TreeMap<>(); // by UTF-16 code unit, as RFC 8785 asks
        for (Map.Entry<String, JsonNode> field : json.properties()) {
            if (!saysNothing(field.getValue())) {
                sorted.put(field.getKey(), field.getValue());
            }
        }
        out.append('{');
        String comma = "";
        for (Map.Entry<String, JsonNode> field : sorted.entrySet()) {
            out.append(comma);
            string(field.getKey(), out);
            out.append(':');
            write(field.getValue(), out);
            comma = ",";
        }
        out.append('}');
    }

    private static void array(JsonNode json, StringBuilder out) {
        out.append('[');
        String comma = "";
        for (JsonNode item : json) {
            out.append(comma);
            write(item, out);
            comma = ",";
        }
        out.append(']');
    }

    private static void string(String text, StringBuilder out) {
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\b' -> out.append("\\b");
                case '\t' -> out.append("\\t");
                case '\n' -> out.append("\\n");
                case '\f' -> out.append("\\f");
                case '\r' -> out.append("\\r");
                default -> {
                    if (c < 0x20) {
                        out.append(String.format("\\u%04x", (int) c));
                    } else {
                        out.append(c);
                    }
                }
            }
        }
        out.append('"');
    }
}
