// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One row of a template, DICOM PS3.16 6.1, as its data file has it.
 *
 * @param template whose row it is
 * @param nest depth below the template's first row
 * @param relation empty for a root, or where an included template's own relation counts
 * @param types value types, or INCLUDE
 * @param concepts empty where any name, or none, will do
 * @param values value sets by name, or codes; empty where any will do
 */
record TemplateRow(
        String template,
        String row,
        int nest,
        Optional<Relation> relation,
        List<String> types,
        List<Code> concepts,
        Times times,
        Optional<String> include,
        List<String> values,
        Optional<Code> units) {
    /**
     * How often and when.
     *
     * @param most {@link Integer#MAX_VALUE} for n
     * @param requirement M, U, MC or UC
     * @param test named condition of MC that a program can judge
     */
    record Times(int most, String requirement, Optional<String> test) {}

    static TemplateRow of(String template, JsonNode row) {
        List<String> types = texts(row, "type");
        Optional<String> relation = Optional.of(row.get("relation").asText()).filter(text -> !text.isEmpty());
        String multiplicity = row.get("multiplicity").asText();
        String most = multiplicity.substring(multiplicity.indexOf('-') + 1);
        return new TemplateRow(
                template,
                row.get("row").asText(),
                row.get("nest").asInt(),
                relation.map(text -> Relation.of(text).orElseThrow()),
                types,
                texts(row, "concept").stream().map(Codes::named).toList(),
                new Times(
                        most.equals("n") ? Integer.MAX_VALUE : Integer.parseInt(most),
                        row.get("requirement").asText(),
                        texts(row, "test").stream().findFirst()),
                texts(row, "template").stream().findFirst(),
                texts(row, "values"),
                texts(row, "units").stream().findFirst().map(Codes::named));
    }

    private static List<String> texts(JsonNode row, String field) {
        List<String> texts = new ArrayList<>();
        JsonNode node = row.path(field);
        if (node.isArray()) {
            node.forEach(element -> texts.add(element.asText()));
        } else if (!node.isMissingNode()) {
            texts.add(node.asText());
        }
        return texts;
    }

    boolean names(ContentItem item) {
        return concepts.isEmpty() ? item.name().isEmpty() : concepts.stream().anyMatch(item::isNamed);
    }

    boolean hasType(ContentItem item) {
        return types.contains(item.value().valueType());
    }

    boolean isRequired() {
        return times.requirement().equals("M");
    }

    /** Such as {@code TID 300 row 14}. */
    String title() {
        return (template.startsWith("PL") ? template : "TID " + template) + " row " + row;
    }

    String wanted() {
        return concepts.isEmpty() ? String.join(" or ", types) : concepts.get(0).meaning();
    }
}
