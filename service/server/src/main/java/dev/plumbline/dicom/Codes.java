// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The code master file of {@code sr-templates}: every code this program writes, with its one meaning. */
final class Codes {
    static final String OWN_SCHEME = "99PLUMB";

    /** One line of the file; the value set it belongs to and what the line says beside the code. */
    record Entry(Code code, String set, String source, JsonNode line) {
        /** The word of the case document or of an answer that this code stands for. */
        Optional<String> word() {
            return text("word");
        }

        Optional<String> text(String field) {
            return line.has(field) ? Optional.of(line.get(field).asText()) : Optional.empty();
        }
    }

    /** Values of one concept, in the order of the file. */
    record ValueSet(String name, String about, Optional<String> concept, List<Entry> entries) {}

    private static final JsonNode FILE = TemplateFiles.json("codes.json");
    private static final List<ValueSet> SETS = readSets();
    private static final Map<String, ValueSet> SET_BY_NAME = byName();
    private static final Map<String, Entry> BY_VALUE = byValue();

    private Codes() {}

    static List<ValueSet> sets() {
        return SETS;
    }

    static ValueSet set(String name) {
        return required(SET_BY_NAME.get(name), "value set " + name);
    }

    /** Designator, UID, name, version and organization of our own scheme, by these names. */
    static String ownScheme(String field) {
        return FILE.get("scheme").get(field).asText();
    }

    static Code dcm(String value) {
        return of("DCM", value);
    }

    static Code sct(String value) {
        return of("SCT", value);
    }

    static Code ucum(String value) {
        return of("UCUM", value);
    }

    /** One of our own, {@code 99PLUMB}. */
    static Code own(String value) {
        return of(OWN_SCHEME, value);
    }

    static Code of(String scheme, String value) {
        return entry(scheme, value).code();
    }

    /** A code as one line of the file names another: scheme, space, value. */
    static Code named(String schemeAndValue) {
        int space = schemeAndValue.indexOf(' ');
        return of(schemeAndValue.substring(0, space), schemeAndValue.substring(space + 1));
    }

    static Entry entry(String scheme, String value) {
        return required(BY_VALUE.get(key(scheme, value)), "code " + value + " of " + scheme);
    }

    /** The line of a code of any origin; empty where the file does not know it. */
    static Optional<Entry> known(Code code) {
        return Optional.ofNullable(BY_VALUE.get(key(code.scheme(), code.value())));
    }

    /** The code of a set that stands for a word; the word is one of an enum, so it is there. */
    static Code ofWord(String set, String word) {
        return required(forWord(set, word).orElse(null), "word " + word + " in " + set)
                .code();
    }

    /** The line of a set that stands for a word a person wrote; empty where there is none. */
    static Optional<Entry> forWord(String set, String word) {
        return set(set).entries().stream()
                .filter(entry -> entry.word().filter(word::equals).isPresent())
                .findFirst();
    }

    /** Which word of a set a code stands for; empty where it stands for none. */
    static Optional<String> wordOf(String set, Code code) {
        return set(set).entries().stream()
                .filter(entry -> entry.code().means(code))
                .findFirst()
                .flatMap(Entry::word);
    }

    private static List<ValueSet> readSets() {
        List<ValueSet> sets = new ArrayList<>();
        for (JsonNode set : FILE.get("sets")) {
            String name = set.get("name").asText();
            List<Entry> entries = new ArrayList<>();
            for (JsonNode line : set.get("codes")) {
                String source = line.path("source").asText(set.get("source").asText());
                entries.add(new Entry(code(set, line), name, source, line));
            }
            Optional<String> concept = Optional.ofNullable(set.get("concept")).map(JsonNode::asText);
            sets.add(new ValueSet(name, set.path("about").asText(""), concept, List.copyOf(entries)));
        }
        return List.copyOf(sets);
    }

    private static Code code(JsonNode set, JsonNode line) {
        return new Code(
                line.get("code").asText(),
                set.get("scheme").asText(),
                line.get("meaning").asText());
    }

    private static Map<String, ValueSet> byName() {
        Map<String, ValueSet> sets = new LinkedHashMap<>();
        SETS.forEach(set -> sets.put(set.name(), set));
        return sets;
    }

    private static Map<String, Entry> byValue() {
        Map<String, Entry> entries = new LinkedHashMap<>();
        for (ValueSet set : SETS) {
            set.entries()
                    .forEach(entry ->
                            entries.put(key(entry.code().scheme(), entry.code().value()), entry));
        }
        return entries;
    }

    private static String key(String scheme, String value) {
        return scheme + " " + value;
    }

    private static <T> T required(@org.jspecify.annotations.Nullable T found, String what) {
        if (found == null) {
            throw new IllegalStateException("The code master file has no " + what + ".");
        }
        return found;
    }
}
