// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Whether two files hold the same object: the same attributes with the same values and the same pixels, however they are
 * encoded. File meta information, group lengths, the extended offset table and trailing padding do not count: they say how,
 * not what (DICOM PS3.5, 7.2 and A.4; PS3.10, 7.2).
 */
public final class ObjectComparison {
    private static final int META_GROUP = 2;
    private static final Set<String> BYTES = Set.of("OB", "OD", "OF", "OL", "OV", "OW", "SV", "UN", "UV");
    private static final Set<Integer> ENCODING =
            Set.of(Tag.EXTENDED_OFFSET_TABLE, Tag.EXTENDED_OFFSET_TABLE_LENGTHS, Tag.DATA_SET_TRAILING_PADDING);

    private static final char NO_LETTER = '\ufffd';

    private final List<String> differing = new ArrayList<>();

    private ObjectComparison() {}

    /** Names of the attributes that differ, such as {@code PatientName (0010,0010)}; never a value. */
    public static List<String> differences(DicomFile one, DicomFile other) throws IOException {
        ObjectComparison comparison = new ObjectComparison();
        comparison.compare(one.header(), other.header());
        comparison.compare(one.trailer(), other.trailer());
        if (!samePixels(one, other)) {
            comparison.differing.add(Fault.name(Tag.PIXEL_DATA));
        }
        return List.copyOf(comparison.differing);
    }

    private void compare(DataSet one, DataSet other) {
        Set<Integer> tags = new TreeSet<>(Integer::compareUnsigned);
        tags.addAll(one.tags());
        tags.addAll(other.tags());
        for (int tag : tags) {
            if (tag >>> 16 != META_GROUP && (tag & 0xffff) != 0 && !ENCODING.contains(tag)) {
                compare(tag, one, other);
            }
        }
    }

    private void compare(int tag, DataSet one, DataSet other) {
        if (one.holds(tag) != other.holds(tag) || !sameValue(tag, one, other)) {
            differing.add(Fault.name(tag));
            return;
        }
        List<DataSet> items = one.items(tag);
        List<DataSet> others = other.items(tag);
        if (items.size() != others.size()) {
            differing.add(Fault.name(tag));
            return;
        }
        for (int i = 0; i < items.size(); i++) {
            compare(items.get(i), others.get(i));
        }
    }

    private static boolean sameValue(int tag, DataSet one, DataSet other) {
        Optional<String> vr = one.vr(tag);
        if (vr.filter(BYTES::contains).isPresent() && vr.equals(other.vr(tag))) {
            return Arrays.equals(one.bytes(tag), other.bytes(tag));
        }
        if (!isDecoded(one.strings(tag))) {
            return Arrays.equals(one.bytes(tag), other.bytes(tag));
        }
        return one.strings(tag).equals(other.strings(tag)) && Arrays.equals(one.numbers(tag), other.numbers(tag));
    }

    /** Not where bytes are no letters of the stated character set: then different bytes become the same text. */
    private static boolean isDecoded(List<String> values) {
        return values.stream().noneMatch(value -> value.indexOf(NO_LETTER) >= 0);
    }

    private static boolean samePixels(DicomFile one, DicomFile other) throws IOException {
        if (one.frameCount() != other.frameCount()) {
            return false;
        }
        boolean sameForm = one.transferSyntax() == other.transferSyntax()
                || (!one.transferSyntax().encapsulated()
                        && !other.transferSyntax().encapsulated());
        for (int frame = 1; frame <= one.frameCount(); frame++) {
            if (sameForm
                    ? !Arrays.equals(one.storedFrame(frame), other.storedFrame(frame))
                    : !sameShown(one, other, frame)) {
                return false;
            }
        }
        return true;
    }

    /** Compressed in different ways: what counts is what is seen. */
    private static boolean sameShown(DicomFile one, DicomFile other, int frame) throws IOException {
        if (!one.isImage() || !other.isImage()) {
            return false;
        }
        var seen = one.image(frame).getRaster();
        var others = other.image(frame).getRaster();
        return seen.getBounds().equals(others.getBounds())
                && Arrays.equals(
                        seen.getPixels(0, 0, seen.getWidth(), seen.getHeight(), (int[]) null),
                        others.getPixels(0, 0, others.getWidth(), others.getHeight(), (int[]) null));
    }
}
