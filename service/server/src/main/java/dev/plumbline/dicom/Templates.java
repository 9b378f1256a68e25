// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The templates of {@code sr-templates} as trees of rows. */
final class Templates {
    private static final List<String> IDENTIFIERS = List.of(
            "1500", "1204", "1001", "1002", "1003", "1004", "1600", "1601", "1602", "1501", "PL2", "4019", "300", "310",
            "320", "2010", "PL1");
    private static final Map<String, List<Node>> BY_IDENTIFIER = read();

    /** A row with the rows nested below it. */
    record Node(TemplateRow row, List<Node> children) {}

    private Templates() {}

    static List<String> identifiers() {
        return IDENTIFIERS;
    }

    /** The rows of a template that are nested below none of it. */
    static List<Node> of(String identifier) {
        List<Node> rows = BY_IDENTIFIER.get(identifier);
        if (rows == null) {
            throw new IllegalArgumentException("No template " + identifier + ".");
        }
        return rows;
    }

    static String file(String identifier) {
        String lower = identifier.toLowerCase(Locale.ROOT);
        return (lower.startsWith("pl") ? lower : "tid-" + lower) + ".json";
    }

    private static Map<String, List<Node>> read() {
        Map<String, List<Node>> templates = new LinkedHashMap<>();
        for (String identifier : IDENTIFIERS) {
            List<TemplateRow> rows = new ArrayList<>();
            for (JsonNode row : TemplateFiles.json(file(identifier)).get("rows")) {
                rows.add(TemplateRow.of(identifier, row));
            }
            templates.put(identifier, nested(rows, 0));
        }
        return templates;
    }

    private static List<Node> nested(List<TemplateRow> rows, int nest) {
        List<Node> nodes = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            if (rows.get(i).nest() == nest) {
                int end = i + 1;
                while (end < rows.size() && rows.get(end).nest() > nest) {
                    end++;
                }
                nodes.add(new Node(rows.get(i), nested(rows.subList(i + 1, end), nest + 1)));
            }
        }
        return List.copyOf(nodes);
    }
}
