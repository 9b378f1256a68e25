// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.MissingNode;
import dev.plumbline.record.CaseDocument;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** What is different between two case documents, in words: the field, what it says now, what it said before. */
public final class CaseChanges {
    private static final Set<String> NOT_SAID = Set.of("schema", "caseId", "signature");
    private static final int LONGEST = 120;

    private final List<String> changes = new ArrayList<>();

    private CaseChanges() {}

    /** The differences but for schema, identifier and signature; blank where there are none. */
    public static String words(CaseDocument before, CaseDocument after) {
        CaseChanges changes = new CaseChanges();
        changes.object("", CaseJson.write(before), CaseJson.write(after));
        return String.join("; ", changes.changes);
    }

    private void object(String place, JsonNode before, JsonNode after) {
        Set<String> names = new TreeSet<>();
        before.fieldNames().forEachRemaining(names::add);
        after.fieldNames().forEachRemaining(names::add);
        if (place.isEmpty()) {
            names.removeAll(NOT_SAID);
        }
        for (String name : names) {
            compare(place + (place.isEmpty() ? "" : " ") + name, before.path(name), after.path(name));
        }
    }

    private void compare(String place, JsonNode before, JsonNode after) {
        if (Canonical.text(before).equals(Canonical.text(after))) {
            return;
        }
        boolean opened = (isOpened(before) && (isOpened(after) || after.isMissingNode()))
                || (before.isMissingNode() && isOpened(after));
        if (opened && (before.isObject() || after.isObject())) {
            object(place, orEmpty(before), orEmpty(after));
        } else if (opened) {
            object(place, named(before), named(after));
        } else if (before.isMissingNode()) {
            changes.add(place + ": " + said(after) + ", was not stated");
        } else if (after.isMissingNode()) {
            changes.add(place + ": not stated any more, was " + said(before));
        } else {
            changes.add(place + ": " + said(after) + " instead of " + said(before));
        }
    }

    private static JsonNode orEmpty(JsonNode node) {
        return node.isObject() ? node : JsonNodeFactory.instance.objectNode();
    }

    /** A point is said as a whole; so is a list of points or words. */
    private static boolean isOpened(JsonNode node) {
        if (node.isObject()) {
            return !isPoint(node);
        }
        return node.isArray()
                && !node.isEmpty()
                && node.get(0).isObject()
                && (node.get(0).has("id") || node.get(0).has("name"));
    }

    private static boolean isPoint(JsonNode node) {
        return node.has("column") && node.has("row");
    }

    /** Items of a list by their id or name, so that an item added at the front changes no other. */
    private static JsonNode named(JsonNode list) {
        Map<String, JsonNode> items = new LinkedHashMap<>();
        for (JsonNode item : list) {
            String name = item.path("id").asText(item.path("name").asText());
            items.put(items.containsKey(name) ? name + " " + (items.size() + 1) : name, item);
        }
        return JsonNodeFactory.instance.objectNode().setAll(items);
    }

    private static String said(JsonNode node) {
        if (isPoint(node)) {
            return "column " + Canonical.text(node.path("column")) + " row " + Canonical.text(node.path("row"));
        }
        if (node.isTextual()) {
            return shortened("\"" + node.textValue() + "\"");
        }
        if (node.isArray() && !node.isEmpty() && isPoint(node.get(0))) {
            return node.size() + " points from " + said(node.get(0)) + " to " + said(node.get(node.size() - 1));
        }
        return node instanceof MissingNode ? "nothing" : shortened(Canonical.text(node));
    }

    private static String shortened(String text) {
        return text.codePointCount(0, text.length()) <= LONGEST
                ? text
                : text.substring(0, text.offsetByCodePoints(0, LONGEST)) + "...";
    }
}
