// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Coded;
import dev.plumbline.dicom.ItemValue.Composite;
import dev.plumbline.dicom.ItemValue.Container;
import dev.plumbline.dicom.ItemValue.Coordinates;
import dev.plumbline.dicom.ItemValue.GraphicType;
import dev.plumbline.dicom.ItemValue.Image;
import dev.plumbline.dicom.ItemValue.Instance;
import dev.plumbline.dicom.ItemValue.Measured;
import dev.plumbline.dicom.ItemValue.Moment;
import dev.plumbline.dicom.ItemValue.Numeric;
import dev.plumbline.dicom.ItemValue.Template;
import dev.plumbline.dicom.ItemValue.Unreadable;
import dev.plumbline.geometry.PointPx;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.regex.Pattern;

/** What one content item says, by value type, DICOM PS3.3 C.17.3.2 and C.18. */
final class ItemReader {
    /** A decimal string, DICOM PS3.5 6.2. */
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d+)?");

    private ItemReader() {}

    static ItemValue value(DataSet item) {
        if (item.holds(Tag.REFERENCED_CONTENT_ITEM_IDENTIFIER)) {
            return new Unreadable("", "it stands by reference to another item");
        }
        String type = item.string(Tag.VALUE_TYPE).orElse("");
        return switch (type) {
            case "CONTAINER" -> new Container(template(item));
            case "TEXT" ->
                item.string(Tag.TEXT_VALUE).<ItemValue>map(ItemValue.Text::new).orElseGet(() -> empty(type));
            case "CODE" ->
                code(item, Tag.CONCEPT_CODE_SEQUENCE).<ItemValue>map(Coded::new).orElseGet(() -> empty(type));
            case "NUM" -> numeric(item);
            case "PNAME" ->
                item.string(Tag.PERSON_NAME)
                        .<ItemValue>map(ItemValue.Person::new)
                        .orElseGet(() -> empty(type));
            case "UIDREF" ->
                item.string(Tag.UID).<ItemValue>map(ItemValue.Uid::new).orElseGet(() -> empty(type));
            case "DATE" -> moment(item, Tag.DATE, type);
            case "TIME" -> moment(item, Tag.TIME, type);
            case "DATETIME" -> moment(item, Tag.DATE_TIME, type);
            case "SCOORD" -> coordinates(item);
            case "IMAGE" -> reference(item, type, Image::new);
            case "COMPOSITE" -> reference(item, type, Composite::new);
            default -> new Unreadable(type, "its value type is not one of ours");
        };
    }

    private static Unreadable empty(String type) {
        return new Unreadable(type, "it has no value");
    }

    private static ItemValue moment(DataSet item, int tag, String type) {
        return item.string(tag).<ItemValue>map(text -> new Moment(type, text)).orElseGet(() -> empty(type));
    }

    private static Optional<Template> template(DataSet item) {
        return item.items(Tag.CONTENT_TEMPLATE_SEQUENCE).stream()
                .findFirst()
                .map(t -> new Template(
                        t.string(Tag.MAPPING_RESOURCE).orElse(""),
                        t.string(Tag.TEMPLATE_IDENTIFIER).orElse("")));
    }

    /** The first code of a sequence; empty where there is none or its value or scheme is missing. */
    static Optional<Code> code(DataSet item, int sequence) {
        List<DataSet> items = item.items(sequence);
        return items.isEmpty() ? Optional.empty() : code(items.get(0));
    }

    private static Optional<Code> code(DataSet code) {
        Optional<String> value = code.string(Tag.CODE_VALUE).or(() -> code.string(Tag.LONG_CODE_VALUE));
        Optional<String> scheme = code.string(Tag.CODING_SCHEME_DESIGNATOR);
        return value.flatMap(v ->
                scheme.map(s -> new Code(v, s, code.string(Tag.CODE_MEANING).orElse(""))));
    }

    private static ItemValue numeric(DataSet item) {
        Optional<Code> qualifier = code(item, Tag.NUMERIC_VALUE_QUALIFIER_CODE_SEQUENCE);
        List<DataSet> values = item.items(Tag.MEASURED_VALUE_SEQUENCE);
        if (values.isEmpty()) {
            return new Numeric(Optional.empty(), qualifier);
        }
        DataSet value = values.get(0);
        Optional<Code> unit = code(value, Tag.MEASUREMENT_UNITS_CODE_SEQUENCE);
        Optional<String> decimal = value.string(Tag.NUMERIC_VALUE).filter(ItemReader::isNumber);
        if (unit.isEmpty() || decimal.isEmpty()) {
            return new Unreadable("NUM", "its measured value is no number with a unit");
        }
        double[] exact = value.numbers(Tag.FLOATING_POINT_VALUE);
        Optional<Double> binary = exact.length == 0 ? Optional.empty() : Optional.of(exact[0]);
        return new Numeric(Optional.of(new Measured(decimal.get(), binary, unit.get())), qualifier);
    }

    private static boolean isNumber(String decimal) {
        return NUMBER.matcher(decimal).matches();
    }

    private static ItemValue coordinates(DataSet item) {
        Optional<GraphicType> type = item.string(Tag.GRAPHIC_TYPE).flatMap(ItemReader::graphicType);
        double[] data = item.numbers(Tag.GRAPHIC_DATA);
        if (type.isEmpty()) {
            return new Unreadable("SCOORD", "its graphic type is not known");
        }
        if (data.length == 0 || data.length % 2 != 0) {
            return new Unreadable("SCOORD", "its graphic data are not pairs of column and row");
        }
        if (Arrays.stream(data).anyMatch(d -> !Double.isFinite(d))) {
            return new Unreadable("SCOORD", "a coordinate is not a finite number");
        }
        List<PointPx> points = new ArrayList<>(data.length / 2);
        for (int i = 0; i < data.length; i += 2) {
            points.add(new PointPx(data[i], data[i + 1]));
        }
        return new Coordinates(type.get(), points);
    }

    private static Optional<GraphicType> graphicType(String name) {
        return Arrays.stream(GraphicType.values())
                .filter(type -> type.name().equals(name))
                .findFirst();
    }

    private static ItemValue reference(DataSet item, String type, Function<Instance, ItemValue> naming) {
        List<DataSet> references = item.items(Tag.REFERENCED_SOP_SEQUENCE);
        if (references.size() != 1) {
            return new Unreadable(type, "it does not name exactly one object");
        }
        DataSet reference = references.get(0);
        Optional<String> sopClass = reference.string(Tag.REFERENCED_SOP_CLASS_UID);
        Optional<String> instance = reference.string(Tag.REFERENCED_SOP_INSTANCE_UID);
        if (sopClass.isEmpty() || instance.isEmpty()) {
            return new Unreadable(type, "it does not name an object by class and instance");
        }
        List<String> frames = reference.strings(Tag.REFERENCED_FRAME_NUMBER);
        if (frames.size() > 1) {
            return new Unreadable(type, "it names several frames");
        }
        OptionalInt frame = reference.integer(Tag.REFERENCED_FRAME_NUMBER);
        return naming.apply(new Instance(sopClass.get(), instance.get(), frame));
    }
}
