// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Repeat;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * One JSON object of the case document while it is read: every question names the field and what it may hold, every refusal
 * carries the pointer to it. A field that is null was not said.
 */
final class Fields {
    /** Points, structures or observations in one list at most; a design choice far above any use. */
    private static final int MOST_ITEMS = 1000;

    private static final String TIME = "a time with offset, such as 2026-01-05T10:15:00+01:00";

    private final JsonNode node;
    private final Place place;
    private final List<String> known;

    /** Opens an object; refuses what is no object and every name it does not know. */
    Fields(JsonNode node, String pointer, CaseObject object) {
        this(node, () -> pointer, object.fields());
    }

    /** An object of another document, by its field names. */
    Fields(JsonNode node, String pointer, List<String> known) {
        this(node, () -> pointer, known);
    }

    /** Where an object stands; spelled out only when it has to be named. */
    @FunctionalInterface
    private interface Place {
        String pointer();
    }

    private Fields(JsonNode node, Place place, List<String> known) {
        if (!node.isObject()) {
            throw refusal(place.pointer(), "a JSON object");
        }
        this.node = node;
        this.place = place;
        this.known = known;
        for (Iterator<String> names = node.fieldNames(); names.hasNext(); ) {
            String name = names.next();
            if (!known.contains(name)) {
                throw new Refusal(new Problem.UnknownField(pointer(name), NearestName.of(name, known), known));
            }
        }
    }

    /** RFC 6901 pointer of this object. */
    String pointer() {
        return place.pointer();
    }

    /** RFC 6901 pointer of a field of this object. */
    String pointer(String name) {
        return place.pointer() + "/" + name.replace("~", "~0").replace("/", "~1");
    }

    boolean has(String name) {
        return value(name).isPresent();
    }

    Optional<JsonNode> value(String name) {
        if (!known.contains(name)) {
            throw new IllegalArgumentException(name + " is not listed among " + known);
        }
        JsonNode value = node.get(name);
        return value == null || value.isNull() ? Optional.empty() : Optional.of(value);
    }

    Optional<Fields> object(String name, CaseObject kind) {
        return value(name).map(value -> new Fields(value, () -> pointer(name), kind.fields()));
    }

    /** What the object holds, or what stands for an object that is absent. */
    <T> T objectOr(String name, CaseObject kind, T absent, Function<Fields, T> reading) {
        return object(name, kind).map(reading).orElse(absent);
    }

    /** The items of an array, read in order; none where it is absent. */
    <T> List<T> list(String name, BiFunction<JsonNode, String, T> reading) {
        return items(name, (item, at) -> reading.apply(item, at.pointer()));
    }

    <T> List<T> objects(String name, CaseObject kind, Function<Fields, T> reading) {
        return items(name, (item, at) -> reading.apply(new Fields(item, at, kind.fields())));
    }

    private <T> List<T> items(String name, BiFunction<JsonNode, Place, T> reading) {
        Optional<JsonNode> array = value(name);
        if (array.isEmpty()) {
            return List.of();
        }
        int size = array.get().size();
        if (!array.get().isArray() || size > MOST_ITEMS) {
            throw refusal(pointer(name), "an array of at most " + MOST_ITEMS + " items");
        }
        List<T> items = new ArrayList<>(size);
        for (int i = 0; i < size; i++) {
            int index = i;
            items.add(reading.apply(array.get().get(i), () -> pointer(name) + "/" + index));
        }
        return List.copyOf(items);
    }

    /** None, or at least so many points. */
    List<PointPx> points(String name, int least) {
        List<PointPx> points = objects(name, CaseObject.POINT, Fields::asPoint);
        if (!points.isEmpty() && points.size() < least) {
            throw refusal(pointer(name), "none, or at least " + least + " points");
        }
        return points;
    }

    Optional<PointPx> point(String name) {
        return object(name, CaseObject.POINT).map(Fields::asPoint);
    }

    PointPx needPoint(String name) {
        return point(name).orElseThrow(() -> missing(name, "a point of the frame: column and row"));
    }

    /** This object as a point, rounded to 1/64 px: stated once, or as the mean of repeats. */
    PointPx asPoint() {
        if (!has("repeats")) {
            return onGrid();
        }
        if (has("column") || has("row")) {
            throw contradiction(
                    "A mark is given either once or as repeats.", "Remove column and row, or remove repeats.");
        }
        List<Repeat> repeats = objects("repeats", CaseObject.REPEAT, Fields::asRepeat);
        try {
            return PointPx.meanOf(repeats);
        } catch (Refusal tooFew) {
            Problem problem = tooFew.problem();
            throw new Refusal(new Problem.InvalidValue(pointer("repeats"), problem.detail(), problem.remedy()));
        }
    }

    private Repeat asRepeat() {
        PointPx point = onGrid();
        return new Repeat(point.column(), point.row(), text("by", Wording.NAME));
    }

    private PointPx onGrid() {
        PointPx point =
                new PointPx(needNumber("column", Range.COORDINATE), needNumber("row", Range.COORDINATE)).onGrid();
        return new PointPx(point.column() + 0.0, point.row() + 0.0); // no negative zero
    }

    OptionalDouble number(String name, Range range) {
        Optional<JsonNode> value = value(name);
        if (value.isEmpty()) {
            return OptionalDouble.empty();
        }
        JsonNode number = value.get();
        boolean taken = number.isNumber() && range.holds(number.doubleValue());
        return OptionalDouble.of(taken ? plain(number) : number(number, pointer(name), range));
    }

    private static double plain(JsonNode number) {
        return number.doubleValue() + 0.0; // no negative zero
    }

    static double number(JsonNode value, String pointer, Range range) {
        if (!value.isNumber()) {
            throw refusal(pointer, "a number, " + range.words());
        }
        if (!range.holds(value.doubleValue())) {
            throw refusal(pointer, range.words());
        }
        return plain(value);
    }

    double needNumber(String name, Range range) {
        return number(name, range).orElseThrow(() -> missing(name, range.words()));
    }

    OptionalInt whole(String name, int low, int high) {
        Optional<JsonNode> value = value(name);
        return value.isEmpty() ? OptionalInt.empty() : OptionalInt.of(whole(value.get(), pointer(name), low, high));
    }

    static int whole(JsonNode value, String pointer, int low, int high) {
        double number = value.isNumber() ? value.doubleValue() : Double.NaN;
        if (number != Math.rint(number) || number < low || number > high) {
            throw refusal(pointer, "a whole number from " + low + " to " + high);
        }
        return (int) number;
    }

    int needWhole(String name, int low, int high) {
        return whole(name, low, high).orElseThrow(() -> missing(name, "a whole number from " + low + " to " + high));
    }

    Optional<Boolean> flag(String name) {
        return value(name).map(value -> {
            if (!value.isBoolean()) {
                throw refusal(pointer(name), "true or false");
            }
            return value.booleanValue();
        });
    }

    Optional<String> text(String name, Wording wording) {
        return value(name).map(value -> text(value, () -> pointer(name), wording));
    }

    private static String text(JsonNode value, Place place, Wording wording) {
        if (!value.isTextual() || !wording.takes(value.textValue())) {
            throw refusal(place.pointer(), wording.words());
        }
        return wording.taken(value.textValue());
    }

    String needText(String name, Wording wording) {
        return text(name, wording).orElseThrow(() -> missing(name, wording.words()));
    }

    /** One of a list of words. */
    <E> Optional<E> word(String name, List<E> known, Function<E, String> word) {
        Optional<JsonNode> value = value(name);
        return value.isEmpty() ? Optional.empty() : Optional.of(word(value.get(), () -> pointer(name), known, word));
    }

    static <E> E word(JsonNode value, String pointer, List<E> known, Function<E, String> word) {
        return word(value, () -> pointer, known, word);
    }

    private static <E> E word(JsonNode value, Place place, List<E> known, Function<E, String> word) {
        for (E one : known) {
            if (word.apply(one).equals(value.textValue())) {
                return one;
            }
        }
        throw refusal(place.pointer(), "one of " + known.stream().map(word).collect(Collectors.joining(", ")));
    }

    /** Words of a list, each at most once. */
    <E> List<E> words(String name, List<E> known, Function<E, String> word) {
        List<E> found = list(
                name,
                (item, at) -> known.stream()
                        .filter(e -> item.isTextual() && word.apply(e).equals(item.textValue()))
                        .findFirst()
                        .orElseThrow(() ->
                                refusal(at, "one of " + known.stream().map(word).collect(Collectors.joining(", ")))));
        if (found.stream().distinct().count() != found.size()) {
            throw refusal(pointer(name), "a list without repetition");
        }
        return found;
    }

    <E> E needWord(String name, List<E> known, Function<E, String> word) {
        return word(name, known, word)
                .orElseThrow(
                        () -> missing(name, "one of " + known.stream().map(word).collect(Collectors.joining(", "))));
    }

    List<String> texts(String name, Wording wording) {
        return items(name, (item, at) -> text(item, at, wording));
    }

    boolean needFlag(String name) {
        return flag(name).orElseThrow(() -> missing(name, "true or false"));
    }

    /** The decimal as it is written, up to the 17 digits that a JSON number carries between programs; no idle zeros. */
    Optional<BigDecimal> decimal(String name, Range range) {
        return value(name).map(value -> {
            number(value, pointer(name), range);
            BigDecimal stripped = value.decimalValue().stripTrailingZeros();
            return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
        });
    }

    BigDecimal needDecimal(String name, Range range) {
        return decimal(name, range).orElseThrow(() -> missing(name, range.words()));
    }

    /** As far as a DICOM date and time can carry it: four-digit year, offset of whole minutes (PS3.5, 6.2, DT). */
    OffsetDateTime needTime(String name) {
        String text = value(name).orElseThrow(() -> missing(name, TIME)).asText();
        try {
            OffsetDateTime time = OffsetDateTime.parse(text);
            int offset = time.getOffset().getTotalSeconds();
            if (time.getYear() < 1900 || time.getYear() > 9999 || offset % 60 != 0 || !inUse(offset)) {
                throw refusal(pointer(name), TIME);
            }
            return time;
        } catch (DateTimeParseException e) {
            throw refusal(pointer(name), TIME);
        }
    }

    /** Source: DICOM PS3.5, 6.2, DT: offsets from -1200 to +1400. */
    private static boolean inUse(int offsetSeconds) {
        return -12 * 3600 <= offsetSeconds && offsetSeconds <= 14 * 3600;
    }

    /** What a part refuses is said at the place of this object. */
    <T> T within(Supplier<T> part) {
        try {
            return part.get();
        } catch (Refusal refusal) {
            throw refusal.problem().pointer().startsWith(pointer())
                            && !pointer().isEmpty()
                    ? refusal
                    : new Refusal(refusal.problem().under(pointer()));
        }
    }

    Refusal missing(String name, String what) {
        return new Refusal(new Problem.MissingField(pointer(name), "Give " + what + "."));
    }

    static Refusal refusal(String pointer, String what) {
        String field = pointer.isEmpty() ? "The document" : "The field " + pointer;
        return new Refusal(new Problem.InvalidValue(pointer, field + " must be " + what + ".", "Give " + what + "."));
    }

    Refusal contradiction(String detail, String remedy) {
        return new Refusal(new Problem.ContradictoryFields(pointer(), detail, remedy));
    }
}
