// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.document.NearestName;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * One object of a site file while it is read. It knows its field names: a name that is none of them is refused with the
 * nearest one, and every refusal points at the field.
 */
final class SiteObject {
    private static final int LONGEST_TEXT = 2000;

    private final JsonNode node;
    private final String pointer;
    private final List<String> known;

    private SiteObject(JsonNode node, String pointer, List<String> known) {
        this.node = node;
        this.pointer = pointer;
        this.known = known;
    }

    static SiteObject of(JsonNode node, String pointer, String... known) {
        if (!node.isObject()) {
            throw must(pointer, "an object");
        }
        List<String> names = Arrays.asList(known);
        for (Iterator<String> found = node.fieldNames(); found.hasNext(); ) {
            String name = found.next();
            if (!names.contains(name)) {
                throw new Refusal(
                        new Problem.UnknownField(pointer + "/" + escaped(name), NearestName.of(name, names), names));
            }
        }
        return new SiteObject(node, pointer, names);
    }

    private static String escaped(String name) {
        return name.replace("~", "~0").replace("/", "~1");
    }

    private static Refusal must(String pointer, String what) {
        return new Refusal(new Problem.InvalidValue(
                pointer, (pointer.isEmpty() ? "The file" : pointer) + " must be " + what + ".", "Give " + what + "."));
    }

    private Optional<JsonNode> value(String name) {
        if (!known.contains(name)) {
            throw new IllegalArgumentException(name + " is not among the known fields " + known);
        }
        return Optional.ofNullable(node.get(name)).filter(value -> !value.isNull());
    }

    private JsonNode needed(String name, String what) {
        return value(name).orElseThrow(() -> new Refusal(new Problem.MissingField(at(name), "Give " + what + ".")));
    }

    /** Whether the field is there and not null, whatever it holds. */
    boolean states(String name) {
        return value(name).isPresent();
    }

    String at(String name) {
        return pointer + "/" + escaped(name);
    }

    /** What a constructor of the core refuses is a fault of the file at this place. */
    <T> T valid(Supplier<T> making) {
        try {
            return making.get();
        } catch (IllegalArgumentException e) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    String.valueOf(e.getMessage()),
                    "Mend " + (pointer.isEmpty() ? "the file" : pointer) + "."));
        }
    }

    String text(String name) {
        JsonNode value = needed(name, "a text");
        if (!value.isTextual()
                || value.textValue().isBlank()
                || value.textValue().length() > LONGEST_TEXT) {
            throw must(at(name), "a text of 1 to " + LONGEST_TEXT + " characters");
        }
        return value.textValue();
    }

    Optional<String> optionalText(String name) {
        return value(name).map(value -> text(name));
    }

    double number(String name) {
        JsonNode value = needed(name, "a number");
        if (!value.isNumber() || !Double.isFinite(value.doubleValue())) {
            throw must(at(name), "a number");
        }
        return value.doubleValue();
    }

    OptionalDouble optionalNumber(String name) {
        return value(name).isPresent() ? OptionalDouble.of(number(name)) : OptionalDouble.empty();
    }

    /** The decimal as it is written, no binary rounding. */
    BigDecimal decimal(String name) {
        JsonNode value = needed(name, "a number");
        if (!value.isNumber()) {
            throw must(at(name), "a number");
        }
        return value.decimalValue();
    }

    Optional<BigDecimal> optionalDecimal(String name) {
        return value(name).map(value -> decimal(name));
    }

    int whole(String name) {
        JsonNode value = needed(name, "a whole number");
        if (!value.isIntegralNumber() || !value.canConvertToInt()) {
            throw must(at(name), "a whole number");
        }
        return value.intValue();
    }

    Optional<Integer> optionalWhole(String name) {
        return value(name).map(value -> whole(name));
    }

    boolean flag(String name) {
        JsonNode value = needed(name, "true or false");
        if (!value.isBoolean()) {
            throw must(at(name), "true or false");
        }
        return value.booleanValue();
    }

    Optional<Boolean> optionalFlag(String name) {
        return value(name).map(value -> flag(name));
    }

    /** One of the words of an enum. */
    <E> E word(String name, E[] all, Function<E, String> word) {
        return wordOf(needed(name, oneOf(all, word)), at(name), all, word);
    }

    <E> Optional<E> optionalWord(String name, E[] all, Function<E, String> word) {
        return value(name).map(value -> wordOf(value, at(name), all, word));
    }

    /** Words of an enum, each at most once; none where the field is absent. */
    <E> List<E> words(String name, E[] all, Function<E, String> word) {
        List<E> found = items(name, (value, at) -> wordOf(value, at, all, word));
        if (found.stream().distinct().count() != found.size()) {
            throw must(at(name), "a list without repetition");
        }
        return found;
    }

    private static <E> E wordOf(JsonNode value, String pointer, E[] all, Function<E, String> word) {
        return Arrays.stream(all)
                .filter(e -> value.isTextual() && word.apply(e).equals(value.textValue()))
                .findFirst()
                .orElseThrow(() -> must(pointer, oneOf(all, word)));
    }

    private static <E> String oneOf(E[] all, Function<E, String> word) {
        return Arrays.stream(all).map(word).collect(Collectors.joining(", ", "one of ", ""));
    }

    List<String> texts(String name) {
        return items(name, (value, at) -> {
            if (!value.isTextual() || value.textValue().isBlank()) {
                throw must(at, "a text");
            }
            return value.textValue();
        });
    }

    List<Integer> wholes(String name) {
        return items(name, (value, at) -> {
            if (!value.isIntegralNumber() || !value.canConvertToInt()) {
                throw must(at, "a whole number");
            }
            return value.intValue();
        });
    }

    Optional<SiteObject> optionalObject(String name, String... fields) {
        return value(name).map(value -> of(value, at(name), fields));
    }

    SiteObject object(String name, String... fields) {
        return of(needed(name, "an object"), at(name), fields);
    }

    List<SiteObject> objects(String name, String... fields) {
        return items(name, (value, at) -> of(value, at, fields));
    }

    /** An object whose names the file chooses, in the order of the names. */
    Map<String, SiteObject> named(String name, String... fields) {
        JsonNode value = needed(name, "an object");
        if (!value.isObject()) {
            throw must(at(name), "an object");
        }
        Map<String, SiteObject> all = new TreeMap<>();
        for (Map.Entry<String, JsonNode> entry : value.properties()) {
            all.put(entry.getKey(), of(entry.getValue(), at(name) + "/" + escaped(entry.getKey()), fields));
        }
        return all;
    }

    /** Reads one item of a list. */
    private interface Item<T> {
        T read(JsonNode value, String at);
    }

    private <T> List<T> items(String name, Item<T> item) {
        Optional<JsonNode> array = value(name);
        if (array.isEmpty()) {
            return List.of();
        }
        if (!array.get().isArray()) {
            throw must(at(name), "a list");
        }
        List<T> all = new ArrayList<>();
        for (JsonNode value : array.get()) {
            all.add(item.read(value, at(name) + "/" + all.size()));
        }
        return List.copyOf(all);
    }
}
