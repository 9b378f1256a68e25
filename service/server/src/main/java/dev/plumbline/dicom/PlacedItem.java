// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.AttributeList;
import com.pixelmed.dicom.SequenceAttribute;
import dev.plumbline.dicom.ValueForm.Text;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A data set, or an item of a sequence, where it stands in its file. What it cannot decode exactly as the toolkit does it
 * leaves to the toolkit: then the answer is null or an empty {@code Optional}, as each method says.
 */
final class PlacedItem {
    private static final int FIRST_SIZE = 8;
    private static final Pattern WHOLE = Pattern.compile("-?\\d{1,9}");
    private static final String SEPARATOR = "\\";
    private static final Pattern SEPARATORS = Pattern.compile(Pattern.quote(SEPARATOR));

    private final PlacedObject object;
    private final @Nullable PlacedItem parent;
    private final int sequence;
    private final int index;
    private int count;
    private ElementHeader[] headers = new ElementHeader[FIRST_SIZE];
    private int[] starts = new int[FIRST_SIZE];
    private @Nullable List<DataSet>[] items = newItems(FIRST_SIZE);

    /** The object itself. */
    PlacedItem(PlacedObject object) {
        this.object = object;
        parent = null;
        sequence = 0;
        index = 0;
    }

    /** @param index of the item in the sequence of its parent, from 0 */
    private PlacedItem(PlacedItem parent, int sequence, int index) {
        object = parent.object;
        this.parent = parent;
        this.sequence = sequence;
        this.index = index;
    }

    @SuppressWarnings({"unchecked", "rawtypes"}) // Java makes no arrays of generic types
    private static @Nullable List<DataSet>[] newItems(int size) {
        return new List[size];
    }

    /** The next attribute in the file; its value starts at this byte. */
    void add(ElementHeader header, long start) {
        boolean nestedCharacterSet = header.tag() == Tag.SPECIFIC_CHARACTER_SET && parent != null;
        if (header.isPrivate() || nestedCharacterSet) { // these have rules of their own in the toolkit
            object.leaveToToolkit();
        }
        if (!object.isUsual()) {
            return;
        }
        if (count == headers.length) {
            headers = Arrays.copyOf(headers, 2 * count);
            starts = Arrays.copyOf(starts, 2 * count);
            items = Arrays.copyOf(items, 2 * count);
        }
        headers[count] = header;
        starts[count] = (int) start; // of a small file
        count++;
    }

    /** The attribute added last is a sequence. */
    void openSequence() {
        if (!object.isUsual()) {
            return;
        }
        if (headers[count - 1].vr().equals("SQ")) {
            items[count - 1] = new ArrayList<>();
        } else { // of unknown value representation
            object.leaveToToolkit();
        }
    }

    /** The next item of the sequence added last. */
    PlacedItem newItem() {
        List<DataSet> open = object.isUsual() ? items[count - 1] : null;
        if (open == null) {
            return this;
        }
        PlacedItem item = new PlacedItem(this, headers[count - 1].tag(), open.size());
        open.add(new DataSet(item));
        return item;
    }

    /** Whether the bytes are what counts; from the first change on the toolkit's attributes are. */
    boolean isCurrent() {
        return !object.isTaken();
    }

    /** This item as the toolkit has it; the object becomes the toolkit's. */
    AttributeList attributes() {
        if (parent == null) {
            return object.take();
        }
        SequenceAttribute held = (SequenceAttribute) parent.attributes().get(DataSet.toolkitTag(sequence));
        return held.getItem(index).getAttributeList();
    }

    /** Where an attribute is in the arrays, which are in order of tags as the gate has seen to; negative where absent. */
    private int find(int tag) {
        int low = 0;
        int high = count - 1;
        while (low <= high) {
            int middle = (low + high) >>> 1;
            int order = Integer.compareUnsigned(headers[middle].tag(), tag);
            if (order == 0) {
                return middle;
            }
            if (order < 0) {
                low = middle + 1;
            } else {
                high = middle - 1;
            }
        }
        return -1;
    }

    boolean holds(int tag) {
        return find(tag) >= 0;
    }

    List<Integer> tags() {
        return Arrays.stream(headers, 0, count).map(ElementHeader::tag).toList();
    }

    Optional<String> vr(int tag) {
        int at = find(tag);
        return at < 0 ? Optional.empty() : Optional.of(headers[at].vr());
    }

    /** The items; none where the attribute is absent or no sequence. */
    List<DataSet> items(int tag) {
        int at = find(tag);
        List<DataSet> held = at < 0 ? null : items[at];
        return held == null ? List.of() : Collections.unmodifiableList(held);
    }

    private Text form(int at) {
        return ValueForm.of(headers[at].vr()).orElseThrow().text();
    }

    /** All values as text, blanks around them removed; empty optional where only the toolkit can tell. */
    Optional<List<String>> strings(int tag) {
        int at = find(tag);
        if (at < 0 || items[at] != null) {
            return Optional.of(List.of());
        }
        Text form = form(at);
        if (form == Text.NONE) {
            return Optional.empty();
        }
        if (headers[at].length() == 0) {
            return Optional.of(List.of());
        }
        return Optional.ofNullable(text(at)).map(text -> values(form, text));
    }

    /** The first value as text, blanks around it removed, empty where there is none; null where only the toolkit can tell. */
    @Nullable
    String first(int tag) {
        int at = find(tag);
        if (at < 0 || items[at] != null) {
            return "";
        }
        Text form = form(at);
        String text = form == Text.NONE ? null : text(at);
        int end = text == null || form == Text.ONE ? -1 : text.indexOf(SEPARATOR);
        return text == null ? null : (end < 0 ? text : text.substring(0, end)).strip();
    }

    private @Nullable String text(int at) {
        return object.text(starts[at], (int) headers[at].length());
    }

    private static List<String> values(Text form, String text) {
        return form == Text.SEVERAL && text.contains(SEPARATOR)
                ? Arrays.stream(SEPARATORS.split(text, -1)).map(String::strip).toList()
                : List.of(text.strip());
    }

    /** The first whole number; empty optional where only the toolkit can tell. */
    Optional<OptionalInt> integer(int tag) {
        int at = find(tag);
        if (at < 0) {
            return Optional.of(OptionalInt.empty());
        }
        if (!headers[at].vr().equals("IS")) {
            return Optional.empty();
        }
        return strings(tag)
                .filter(values ->
                        !values.isEmpty() && WHOLE.matcher(values.get(0)).matches())
                .map(values -> OptionalInt.of(Integer.parseInt(values.get(0))));
    }

    /** Binary floating point numbers; empty optional where only the toolkit can tell. */
    Optional<double[]> numbers(int tag) {
        int at = find(tag);
        if (at < 0) {
            return Optional.of(new double[0]);
        }
        int length = (int) headers[at].length();
        ByteBuffer value = ByteBuffer.wrap(object.bytes(), starts[at], length).order(ByteOrder.LITTLE_ENDIAN);
        return switch (headers[at].vr()) {
            case "FL" -> {
                double[] numbers = new double[length / Float.BYTES];
                Arrays.setAll(numbers, i -> value.getFloat());
                yield Optional.of(numbers);
            }
            case "FD" -> {
                double[] numbers = new double[length / Double.BYTES];
                Arrays.setAll(numbers, i -> value.getDouble());
                yield Optional.of(numbers);
            }
            default -> Optional.empty();
        };
    }
}
