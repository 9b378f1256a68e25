// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.AttributeList;
import com.pixelmed.dicom.SequenceAttribute;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A data set, or an item of a sequence, where it stands in the bytes of a file in Explicit VR Little Endian. Values are
 * decoded when they are asked for. What it cannot decode exactly as the toolkit does it leaves to the toolkit, which then
 * reads the whole object once; from then on this item is the toolkit's.
 */
final class PlainItem {
    private static final int FIRST_SIZE = 8;
    private static final Pattern WHOLE = Pattern.compile("-?\\d{1,9}");
    private static final char SEPARATOR = '\\';

    private final PlainObject object;
    private final @Nullable PlainItem parent;
    private final int sequence;
    private final int index;
    private int count;
    private int[] tags = new int[FIRST_SIZE];
    private String[] vrs = new String[FIRST_SIZE];
    private int[] starts = new int[FIRST_SIZE];
    private int[] lengths = new int[FIRST_SIZE];
    private @Nullable List<PlainItem>[] items = newItems(FIRST_SIZE);

    /** The object itself. */
    PlainItem(PlainObject object) {
        this.object = object;
        parent = null;
        sequence = 0;
        index = 0;
    }

    /** @param index of the item in the sequence of its parent, from 0 */
    PlainItem(PlainItem parent, int sequence, int index) {
        object = parent.object;
        this.parent = parent;
        this.sequence = sequence;
        this.index = index;
    }

    @SuppressWarnings("unchecked") // Java makes no arrays of generic types
    private static @Nullable List<PlainItem>[] newItems(int size) {
        return new List[size];
    }

    void add(int tag, String vr, int start, int length) {
        if (count == tags.length) {
            int size = 2 * count;
            tags = Arrays.copyOf(tags, size);
            vrs = Arrays.copyOf(vrs, size);
            starts = Arrays.copyOf(starts, size);
            lengths = Arrays.copyOf(lengths, size);
            items = Arrays.copyOf(items, size);
        }
        tags[count] = tag;
        vrs[count] = vr;
        starts[count] = start;
        lengths[count] = length;
        count++;
    }

    /** The items of the sequence that was added last. */
    List<PlainItem> openItems() {
        List<PlainItem> open = new ArrayList<>();
        items[count - 1] = open;
        return open;
    }

    /** Whether the bytes are still what counts; afterwards the toolkit's attributes are. */
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

    private int find(int tag) {
        // in unsigned order, as the gate has seen to
        int low = 0;
        int high = count - 1;
        while (low <= high) {
            int middle = (low + high) >>> 1;
            int order = Integer.compareUnsigned(tags[middle], tag);
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
        List<Integer> list = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            list.add(tags[i]);
        }
        return list;
    }

    Optional<String> vr(int tag) {
        int at = find(tag);
        return at < 0 ? Optional.empty() : Optional.of(vrs[at]);
    }

    /** The items; empty where the attribute is absent or no sequence. */
    List<PlainItem> items(int tag) {
        int at = find(tag);
        List<PlainItem> held = at < 0 ? null : items[at];
        return held == null ? List.of() : held;
    }

    /** All values as text, blanks around them removed; empty optional where only the toolkit can tell. */
    Optional<List<String>> strings(int tag) {
        int at = find(tag);
        if (at < 0 || items[at] != null || (lengths[at] == 0 && PlainText.knows(vrs[at]))) {
            return Optional.of(List.of());
        }
        if (!PlainText.knows(vrs[at])) {
            return Optional.empty();
        }
        return object.text(starts[at], lengths[at])
                .map(text -> PlainText.isMultiple(vrs[at]) && text.indexOf(SEPARATOR) >= 0
                        ? Arrays.stream(text.split("\\\\", -1))
                                .map(String::strip)
                                .toList()
                        : List.of(text.strip()));
    }

    /** The first whole number; empty optional where only the toolkit can tell. */
    Optional<OptionalInt> integer(int tag) {
        int at = find(tag);
        if (at < 0) {
            return Optional.of(OptionalInt.empty());
        }
        if (!vrs[at].equals("IS")) {
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
        ByteBuffer value =
                ByteBuffer.wrap(object.bytes(), starts[at], lengths[at]).order(ByteOrder.LITTLE_ENDIAN);
        if (vrs[at].equals("FL")) {
            double[] numbers = new double[lengths[at] / Float.BYTES];
            for (int i = 0; i < numbers.length; i++) {
                numbers[i] = value.getFloat();
            }
            return Optional.of(numbers);
        }
        if (vrs[at].equals("FD")) {
            double[] numbers = new double[lengths[at] / Double.BYTES];
            for (int i = 0; i < numbers.length; i++) {
                numbers[i] = value.getDouble();
            }
            return Optional.of(numbers);
        }
        return Optional.empty();
    }
}
