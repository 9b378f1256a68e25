// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.Attribute;
import com.pixelmed.dicom.AttributeList;
import com.pixelmed.dicom.AttributeTag;
import com.pixelmed.dicom.AttributeTagAttribute;
import com.pixelmed.dicom.DicomException;
import com.pixelmed.dicom.FloatSingleAttribute;
import com.pixelmed.dicom.OtherWordAttribute;
import com.pixelmed.dicom.SequenceAttribute;
import com.pixelmed.dicom.SpecificCharacterSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * A DICOM data set: attributes by tag, sequences nested. Tags are the constants of {@link Tag}.
 *
 * <p>Text put in is held for ISO_IR 192; a writer states that character set in the object itself. Reading never repairs:
 * an attribute that is absent or empty is an empty answer.
 */
public final class DataSet {
    private static final SpecificCharacterSet UTF_8 = new SpecificCharacterSet(new String[] {"ISO_IR 192"});

    private @Nullable AttributeList attributes;
    private final @Nullable PlacedItem placed;

    public DataSet() {
        this(new AttributeList());
    }

    DataSet(AttributeList attributes) {
        this.attributes = attributes;
        placed = null;
    }

    /** One that is read where it stands in its file, until something is put into it or only the toolkit can tell. */
    DataSet(PlacedItem placed) {
        this.placed = placed;
    }

    AttributeList attributes() {
        if (attributes == null) {
            attributes = Objects.requireNonNull(placed).attributes();
        }
        return attributes;
    }

    /** Whether values are still decoded from the bytes of the file. */
    boolean isReadWhereItStands() {
        return placed().isPresent();
    }

    private Optional<PlacedItem> placed() {
        return placed != null && placed.isCurrent() ? Optional.of(placed) : Optional.empty();
    }

    public boolean holds(int tag) {
        Optional<PlacedItem> bytes = placed();
        return bytes.isPresent() ? bytes.get().holds(tag) : attributes().get(toolkitTag(tag)) != null;
    }

    /** Tags present, ascending, file meta information included where it was read from a file. */
    public List<Integer> tags() {
        Optional<PlacedItem> bytes = placed();
        if (bytes.isPresent()) {
            return bytes.get().tags();
        }
        List<Integer> tags = new ArrayList<>(attributes().size());
        for (AttributeTag tag : attributes().keySet()) {
            tags.add(tag.getGroup() << 16 | tag.getElement());
        }
        return tags;
    }

    /** The two letters of the value representation; empty where the attribute is absent. */
    public Optional<String> vr(int tag) {
        Optional<PlacedItem> bytes = placed();
        return bytes.isPresent()
                ? bytes.get().vr(tag)
                : Optional.ofNullable(attributes().get(toolkitTag(tag))).map(Attribute::getVRAsString);
    }

    /** All values as text, padding removed; empty where absent, empty or a sequence. */
    public List<String> strings(int tag) {
        Optional<List<String>> bytes = placed().flatMap(item -> item.strings(tag));
        if (bytes.isPresent()) {
            return bytes.get();
        }
        Attribute attribute = attributes().get(toolkitTag(tag));
        if (attribute == null || attribute instanceof SequenceAttribute) {
            return List.of();
        }
        String[] values = Attribute.getStringValues(attribute);
        if (values == null) {
            return List.of();
        }
        return Arrays.stream(values).map(v -> v == null ? "" : v.strip()).toList();
    }

    /** The first value as text; empty where absent or blank. */
    public Optional<String> string(int tag) {
        String first = placed != null && placed.isCurrent() ? placed.first(tag) : null;
        if (first != null) {
            return first.isEmpty() ? Optional.empty() : Optional.of(first);
        }
        List<String> values = strings(tag);
        return values.isEmpty() || values.get(0).isEmpty() ? Optional.empty() : Optional.of(values.get(0));
    }

    /** The first value as a whole number; empty where absent or not one. */
    public OptionalInt integer(int tag) {
        Optional<OptionalInt> bytes = placed().flatMap(item -> item.integer(tag));
        if (bytes.isPresent()) {
            return bytes.get();
        }
        Attribute attribute = attributes().get(toolkitTag(tag));
        if (attribute == null || attribute.getVM() == 0) {
            return OptionalInt.empty();
        }
        int[] values = Attribute.getIntegerValues(attribute);
        return values == null || values.length == 0 ? OptionalInt.empty() : OptionalInt.of(values[0]);
    }

    /** All values as numbers; empty where absent or not numbers. */
    public double[] numbers(int tag) {
        Optional<double[]> bytes = placed().flatMap(item -> item.numbers(tag));
        if (bytes.isPresent()) {
            return bytes.get();
        }
        Attribute attribute = attributes().get(toolkitTag(tag));
        if (attribute == null || attribute.getVM() == 0) {
            return new double[0];
        }
        double[] values = Attribute.getDoubleValues(attribute);
        return values == null ? new double[0] : values;
    }

    /** The first value as a number; empty where absent or not one. */
    public OptionalDouble number(int tag) {
        double[] values = numbers(tag);
        return values.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(values[0]);
    }

    /** The bytes of an attribute (OB, UN, text as it came), or its values as bytes, low byte first (OW, OF, OD, OL, OV, SV, UV). */
    public byte[] bytes(int tag) {
        Attribute attribute = attributes().get(toolkitTag(tag));
        return attribute == null || attribute.getVL() == 0 ? new byte[0] : BinaryValues.of(attribute);
    }

    /** The items of a sequence; empty where absent or without items. */
    public List<DataSet> items(int tag) {
        Optional<PlacedItem> bytes = placed();
        if (bytes.isPresent()) {
            return bytes.get().items(tag);
        }
        if (!(attributes().get(toolkitTag(tag)) instanceof SequenceAttribute sequence)) {
            return List.of();
        }
        List<DataSet> items = new ArrayList<>(sequence.getNumberOfItems());
        for (int i = 0; i < sequence.getNumberOfItems(); i++) {
            items.add(new DataSet(sequence.getItem(i).getAttributeList()));
        }
        return Collections.unmodifiableList(items);
    }

    /** Puts text, dates, codes, UIDs, DS and IS; no values at all make an empty (type 2) attribute. */
    public DataSet put(int tag, String... values) {
        return fill(tag, attribute -> {
            for (String value : values) {
                attribute.addValue(value);
            }
        });
    }

    /** Puts binary whole numbers (US, UL, SS, SL). */
    public DataSet put(int tag, int... values) {
        return fill(tag, attribute -> {
            for (int value : values) {
                attribute.addValue(value);
            }
        });
    }

    /** Puts binary floating point numbers (FL, FD). */
    public DataSet put(int tag, double... values) {
        return fill(tag, attribute -> {
            for (double value : values) {
                attribute.addValue(value);
            }
        });
    }

    /** Puts bytes (OB, UN); pads to an even length with NUL. */
    public DataSet put(int tag, byte[] bytes) {
        byte[] even = bytes.length % 2 == 0 ? bytes : Arrays.copyOf(bytes, bytes.length + 1);
        return fill(tag, attribute -> attribute.setValues(even));
    }

    /**
     * Puts 16-bit samples, least significant bit first (OW).
     *
     * @param words kept, not copied; do not change them afterwards
     */
    public DataSet put(int tag, short[] words) {
        if (tag != Tag.PIXEL_DATA) {
            return fill(tag, attribute -> attribute.setValues(words));
        }
        // the dictionary leaves bytes or words open for pixel data
        return fill(tag, attribute -> {
            OtherWordAttribute pixels = new OtherWordAttribute(attribute.getTag());
            pixels.setValues(words);
            attributes().put(pixels);
        });
    }

    /** Puts 32-bit floating point numbers as they are (FL, OF), such as graphic data. */
    public DataSet put(int tag, float... values) {
        return fill(tag, attribute -> {
            if (attribute instanceof FloatSingleAttribute single) { // takes them one by one only
                for (float value : values) {
                    single.addValue(value);
                }
            } else {
                attribute.setValues(values);
            }
        });
    }

    /** Puts the tag of another attribute (AT), such as the frame increment pointer. */
    public DataSet putPointer(int tag, int to) {
        return fill(tag, attribute -> ((AttributeTagAttribute) attribute).addValue(toolkitTag(to)));
    }

    /** Puts an attribute without a value (type 2), a sequence without items included. */
    public DataSet putEmpty(int tag) {
        return fill(tag, attribute -> {});
    }

    /** Takes an attribute out; absent stays absent. */
    public DataSet remove(int tag) {
        attributes().remove(toolkitTag(tag));
        return this;
    }

    /** Puts a sequence; no items make an empty (type 2) sequence. */
    public DataSet put(int tag, List<DataSet> items) {
        SequenceAttribute sequence = new SequenceAttribute(toolkitTag(tag));
        items.forEach(item -> sequence.addItem(item.attributes()));
        attributes().put(sequence);
        return this;
    }

    /** Copies one attribute as it is; absent stays absent. Sequences are shared, so do not change them afterwards. */
    public DataSet copy(int tag, DataSet from) {
        Attribute attribute = from.attributes().get(toolkitTag(tag));
        if (attribute != null) {
            attributes().put(attribute);
        }
        return this;
    }

    private DataSet fill(int tag, Filling filling) {
        try {
            filling.into(attributes().putNewAttribute(toolkitTag(tag), UTF_8));
            return this;
        } catch (DicomException e) {
            throw new IllegalArgumentException("Not a value for (" + Tag.text(tag) + ")", e);
        }
    }

    static AttributeTag toolkitTag(int tag) {
        return new AttributeTag(tag >>> 16, tag & 0xffff);
    }

    private interface Filling {
        void into(Attribute attribute) throws DicomException;
    }
}
