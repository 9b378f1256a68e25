// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.ItemValue.Coded;
import dev.plumbline.dicom.ItemValue.Measured;
import dev.plumbline.dicom.ItemValue.Numeric;
import dev.plumbline.dicom.ItemValue.Person;
import dev.plumbline.dicom.ItemValue.Text;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A field of the case document with the content item that it stands in, both ways, so that what is written is what is read.
 * A field that is absent writes nothing, and an item that is absent gives nothing.
 */
record FieldItem(Writing writing, Reading reading) {
    /** From the object that may have the field to items of one parent. */
    @FunctionalInterface
    interface Writing {
        void write(JsonNode stated, List<ContentItem> items);
    }

    /** From the parent item to the object that has the field. */
    @FunctionalInterface
    interface Reading {
        void read(ContentItem holder, ObjectNode stated);
    }

    /** The items of every field that an object has, in the order of the list. */
    static List<ContentItem> write(List<FieldItem> fields, JsonNode stated) {
        List<ContentItem> items = new ArrayList<>();
        fields.forEach(field -> field.writing.write(stated, items));
        return items;
    }

    /** Puts every field of the list that stands under an item. */
    static void read(List<FieldItem> fields, ContentItem holder, ObjectNode stated) {
        fields.forEach(field -> field.reading.read(holder, stated));
    }

    static FieldItem text(String field, Relation relation, Code concept) {
        return one(field, concept, value -> ContentItem.text(relation, concept, value.asText()), FieldItem::words);
    }

    static FieldItem person(String field, Relation relation, Code concept) {
        return one(field, concept, value -> ContentItem.person(relation, concept, value.asText()), FieldItem::words);
    }

    /** A word with its code; a word of the site's own stands as text. */
    static FieldItem word(String field, Relation relation, Code concept, String... sets) {
        return one(field, concept, value -> coded(relation, concept, value.asText(), sets), item -> word(item, sets));
    }

    static FieldItem flag(String field, Relation relation, Code concept) {
        return new FieldItem(
                (stated, items) -> {
                    if (stated.has(field)) {
                        items.add(ContentItem.code(
                                relation,
                                concept,
                                Concepts.yesOrNo(stated.get(field).asBoolean())));
                    }
                },
                (holder, stated) -> holder.codeOf(concept)
                        .flatMap(code -> Codes.wordOf("answers", code))
                        .ifPresent(word -> stated.put(field, Boolean.parseBoolean(word))));
    }

    /** A flag that means nothing unless it is true. */
    static FieldItem raised(String field, Relation relation, Code concept) {
        FieldItem always = flag(field, relation, concept);
        return new FieldItem(
                (stated, items) -> {
                    if (stated.path(field).asBoolean()) {
                        always.writing.write(stated, items);
                    }
                },
                always.reading);
    }

    static FieldItem number(String field, Relation relation, Code concept, String unit) {
        return new FieldItem(
                (stated, items) -> {
                    if (stated.has(field)) {
                        items.add(Measurement.plain(
                                relation,
                                concept,
                                DecimalText.stated(stated.get(field).decimalValue(), Codes.ucum(unit))));
                    }
                },
                (holder, stated) ->
                        holder.first(concept).flatMap(FieldItem::measured).ifPresent(m -> put(stated, field, m)));
    }

    /** Several texts in their order. */
    static FieldItem texts(String field, Relation relation, Code concept) {
        return several(field, concept, text -> ContentItem.text(relation, concept, text), FieldItem::words);
    }

    /** Several names in their order. */
    static FieldItem persons(String field, Relation relation, Code concept) {
        return several(field, concept, name -> ContentItem.person(relation, concept, name), FieldItem::words);
    }

    /** Several words of one set in their order. */
    static FieldItem words(String field, Relation relation, Code concept, String set) {
        return several(
                field,
                concept,
                word -> ContentItem.code(relation, concept, Codes.ofWord(set, word)),
                item -> word(item, set));
    }

    /** Fields of an object within the object, as items of the same parent. */
    static FieldItem within(String field, List<FieldItem> fields) {
        return new FieldItem((stated, items) -> items.addAll(write(fields, stated.path(field))), (holder, stated) -> {
            ObjectNode inner = stated.objectNode();
            read(fields, holder, inner);
            if (!inner.isEmpty()) {
                stated.set(field, inner);
            }
        });
    }

    private static FieldItem one(
            String field,
            Code concept,
            Function<JsonNode, ContentItem> writing,
            Function<ContentItem, Optional<String>> reading) {
        return new FieldItem(
                (stated, items) -> {
                    if (stated.has(field)) {
                        items.add(writing.apply(stated.get(field)));
                    }
                },
                (holder, stated) ->
                        holder.first(concept).flatMap(reading).ifPresent(value -> stated.put(field, value)));
    }

    private static FieldItem several(
            String field,
            Code concept,
            Function<String, ContentItem> writing,
            Function<ContentItem, Optional<String>> reading) {
        return new FieldItem(
                (stated, items) -> stated.path(field).forEach(value -> items.add(writing.apply(value.asText()))),
                (holder, stated) -> {
                    List<String> values = holder.named(concept)
                            .flatMap(item -> reading.apply(item).stream())
                            .toList();
                    if (!values.isEmpty()) {
                        values.forEach(stated.putArray(field)::add);
                    }
                });
    }

    static ContentItem coded(Relation relation, Code concept, String word, String... sets) {
        for (String set : sets) {
            Optional<Codes.Entry> entry = Codes.forWord(set, word);
            if (entry.isPresent()) {
                return ContentItem.code(relation, concept, entry.get().code());
            }
        }
        return ContentItem.text(relation, concept, word);
    }

    static Optional<String> word(ContentItem item, String... sets) {
        if (item.value() instanceof Coded coded) {
            for (String set : sets) {
                Optional<String> word = Codes.wordOf(set, coded.code());
                if (word.isPresent()) {
                    return word;
                }
            }
            return Optional.empty();
        }
        return words(item);
    }

    private static Optional<String> words(ContentItem item) {
        if (item.value() instanceof Text text) {
            return Optional.of(text.text());
        }
        return item.value() instanceof Person person ? Optional.of(person.name()) : Optional.empty();
    }

    static Optional<Measured> measured(ContentItem item) {
        return item.value() instanceof Numeric numeric ? numeric.measured() : Optional.empty();
    }

    /** A whole number stays one. */
    static void put(ObjectNode stated, String field, Measured measured) {
        BigDecimal value =
                measured.exact().map(BigDecimal::valueOf).orElseGet(() -> new BigDecimal(measured.decimal()));
        boolean whole = value.signum() == 0 || value.stripTrailingZeros().scale() <= 0;
        if (whole && value.abs().compareTo(BigDecimal.valueOf(Integer.MAX_VALUE)) <= 0) {
            stated.put(field, value.intValue());
        } else {
            stated.put(field, value.doubleValue());
        }
    }
}
