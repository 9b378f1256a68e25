// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.DecimalNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.pixelmed.dicom.Attribute;
import com.pixelmed.dicom.AttributeTag;
import com.pixelmed.dicom.AttributeTagAttribute;
import com.pixelmed.dicom.DicomException;
import com.pixelmed.dicom.SequenceAttribute;
import java.math.BigDecimal;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A data set as DICOM JSON.
 *
 * <p>File meta information and group lengths are left out; text is UTF-8, so a stated character set becomes ISO_IR 192.
 * Binary values of more than {@value #INLINE_BYTES} bytes and all pixel data are named by a {@code BulkDataURI}. An
 * attribute without a value has neither {@code Value} nor anything in its place.
 *
 * <p>Source: DICOM PS3.18 annex F; the size limit is a design choice.
 */
public final class DicomJson {
    static final int INLINE_BYTES = 1024;

    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;
    private static final Set<String> NUMBERS = Set.of("DS", "IS", "SL", "SS", "SV", "UL", "US", "UV");
    private static final Set<String> FLOATING = Set.of("FD", "FL");
    private static final Set<String> ONE_TEXT = Set.of("LT", "ST", "UR", "UT");
    private static final Set<Integer> PIXELS = Set.of(0x7FE00008, 0x7FE00009, 0x7FE00010);
    private static final HexFormat HEXADECIMAL = HexFormat.of().withUpperCase();
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,3})?");
    private static final Pattern PADDING = Pattern.compile("[ \\x00]+\\z");
    private static final String[] NAME_GROUPS = {"Alphabetic", "Ideographic", "Phonetic"};
    private static final int FILE_META_GROUP = 0x0002;

    private final String bulkBase;

    private DicomJson(String bulkBase) {
        this.bulkBase = bulkBase;
    }

    /**
     * The whole data set.
     *
     * @param bulkBase what a bulk data address begins with, such as {@code bulkdata/}, relative to where this is read
     */
    public static ObjectNode of(DataSet dataSet, String bulkBase) {
        return new DicomJson(bulkBase).object(dataSet, "");
    }

    /** The data set of a file; its pixel data, which stay in the file, are named by their address. */
    public static ObjectNode of(DicomFile file, String bulkBase) {
        ObjectNode object = of(file.header(), bulkBase);
        if (file.frameCount() > 0) {
            String pixels = name(Tag.PIXEL_DATA);
            String vr = file.transferSyntax().encapsulated() ? "OB" : "OW";
            object.set(pixels, JSON.objectNode().put("vr", vr).put("BulkDataURI", bulkBase + pixels));
        }
        return object;
    }

    /** The attributes of the data set itself that have a value of their own: sequences are left out, and never looked into. */
    public static ObjectNode withoutSequences(DataSet dataSet) {
        DicomJson json = new DicomJson("");
        ObjectNode object = JSON.objectNode();
        for (int tag : dataSet.tags()) {
            String vr = dataSet.vr(tag).orElseThrow();
            if (isWritten(tag) && isText(vr)) {
                object.set(name(tag), withValues(JSON.objectNode().put("vr", vr), texts(dataSet, vr, tag)));
            } else if (isWritten(tag) && !vr.equals("SQ")) {
                Attribute attribute = dataSet.attributes().get(DataSet.toolkitTag(tag));
                object.set(name(tag), json.attribute(dataSet, attribute, name(tag)));
            }
        }
        return object;
    }

    /** Texts are read where they stand; the toolkit would read the whole object first. */
    private static boolean isText(String vr) {
        return ValueForm.of(vr)
                .filter(form -> form.text() == ValueForm.Text.SEVERAL)
                .isPresent();
    }

    private static boolean isWritten(int tag) {
        return tag >>> 16 != FILE_META_GROUP && (tag & 0xffff) != 0;
    }

    /** The name of an attribute in DICOM JSON: eight upper-case hexadecimal digits. */
    public static String name(int tag) {
        return HEXADECIMAL.toHexDigits(tag);
    }

    private ObjectNode object(DataSet dataSet, String path) {
        ObjectNode object = JSON.objectNode();
        for (int tag : dataSet.tags()) {
            Attribute attribute = dataSet.attributes().get(DataSet.toolkitTag(tag));
            if (attribute != null && isWritten(tag)) {
                object.set(name(tag), attribute(dataSet, attribute, path + name(tag)));
            }
        }
        return object;
    }

    private ObjectNode attribute(DataSet dataSet, Attribute attribute, String path) {
        ObjectNode node = JSON.objectNode().put("vr", attribute.getVRAsString());
        int tag = tag(attribute.getTag());
        if (attribute instanceof SequenceAttribute) {
            return withValues(node, items(dataSet, tag, path));
        }
        if (BulkData.isBinary(attribute)) {
            return withBytes(node, attribute, path);
        }
        return withValues(node, values(dataSet, attribute, tag));
    }

    private ArrayNode items(DataSet dataSet, int tag, String path) {
        ArrayNode items = JSON.arrayNode();
        for (DataSet item : dataSet.items(tag)) {
            items.add(object(item, path + "." + (items.size() + 1) + "."));
        }
        return items;
    }

    private ObjectNode withBytes(ObjectNode node, Attribute attribute, String path) {
        if (PIXELS.contains(tag(attribute.getTag())) || attribute.getVL() > INLINE_BYTES) {
            return node.put("BulkDataURI", bulkBase + path);
        }
        return attribute.getVL() == 0
                ? node
                : node.put("InlineBinary", Base64.getEncoder().encodeToString(BulkData.bytes(attribute)));
    }

    private static ObjectNode withValues(ObjectNode node, ArrayNode values) {
        if (!values.isEmpty()) {
            node.set("Value", values);
        }
        return node;
    }

    private static ArrayNode values(DataSet dataSet, Attribute attribute, int tag) {
        ArrayNode values = JSON.arrayNode();
        if (attribute.getVL() == 0) {
            return values;
        }
        if (attribute instanceof AttributeTagAttribute tags) {
            return tagValues(tags);
        }
        if (FLOATING.contains(attribute.getVRAsString())) {
            return floating(attribute);
        }
        if (ONE_TEXT.contains(attribute.getVRAsString())) {
            wholeText(attribute).ifPresent(values::add);
            return values;
        }
        return texts(dataSet, attribute.getVRAsString(), tag);
    }

    private static ArrayNode texts(DataSet dataSet, String vr, int tag) {
        ArrayNode values = JSON.arrayNode();
        List<String> texts = dataSet.strings(tag);
        if (tag == Tag.SPECIFIC_CHARACTER_SET) {
            return texts.isEmpty() ? values : values.add("ISO_IR 192");
        }
        texts.forEach(text -> addValue(values, vr, text));
        return onlyBlanks(values) ? JSON.arrayNode() : values;
    }

    /** Backslashes, line ends and leading blanks belong to such a text; blanks and NULs at its end pad it. */
    private static Optional<String> wholeText(Attribute attribute) {
        String[] texts = Attribute.getStringValues(attribute);
        if (texts == null) {
            return Optional.empty();
        }
        return Optional.of(PADDING.matcher(String.join("\\", texts)).replaceAll(""))
                .filter(text -> !text.isEmpty());
    }

    private static ArrayNode tagValues(AttributeTagAttribute attribute) {
        ArrayNode values = JSON.arrayNode();
        try {
            for (AttributeTag each : attribute.getAttributeTagValues()) {
                values.add(name(tag(each)));
            }
            return values;
        } catch (DicomException e) {
            throw new IllegalStateException("A tag value that passed the gate cannot be read", e);
        }
    }

    private static ArrayNode floating(Attribute attribute) {
        ArrayNode values = JSON.arrayNode();
        boolean single = "FL".equals(attribute.getVRAsString());
        for (double value : Attribute.getDoubleValues(attribute)) {
            if (Double.isNaN(value)) {
                values.add("NaN");
            } else if (Double.isInfinite(value)) {
                values.add(value > 0 ? "inf" : "-inf");
            } else {
                values.add(JSON.numberNode(
                        single ? new BigDecimal(Float.toString((float) value)) : BigDecimal.valueOf(value)));
            }
        }
        return values;
    }

    private static void addValue(ArrayNode values, String vr, String text) {
        if (text.isEmpty()) {
            values.addNull();
        } else if ("PN".equals(vr)) {
            values.add(personName(text));
        } else if (NUMBERS.contains(vr) && NUMBER.matcher(text).matches()) {
            values.add(DecimalNode.valueOf(new BigDecimal(text)));
        } else {
            // A decimal string that is no number stays the text it is: F.2.3.1 allows strings, and nothing is repaired.
            values.add(text);
        }
    }

    private static ObjectNode personName(String text) {
        ObjectNode name = JSON.objectNode();
        String[] groups = text.split("=", -1);
        for (int i = 0; i < Math.min(groups.length, NAME_GROUPS.length); i++) {
            if (!groups[i].isEmpty()) {
                name.put(NAME_GROUPS[i], groups[i]);
            }
        }
        return name;
    }

    private static boolean onlyBlanks(ArrayNode values) {
        for (int i = 0; i < values.size(); i++) {
            if (!values.get(i).isNull()) {
                return false;
            }
        }
        return true;
    }

    private static int tag(AttributeTag tag) {
        return tag.getGroup() << 16 | tag.getElement();
    }
}
