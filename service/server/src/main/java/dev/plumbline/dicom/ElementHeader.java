// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.AttributeList;
import java.io.IOException;
import java.nio.charset.StandardCharsets;

/**
 * Tag, value representation and length of one element, as encoded; the tag has been read already.
 *
 * @param vr from the file, or from the standard's dictionary where the encoding is implicit
 * @param length {@link #UNDEFINED} where the value ends at a delimiter
 * @param offset of the tag in the file
 */
record ElementHeader(int tag, String vr, long length, long offset) {
    static final long UNDEFINED = 0xffffffffL;
    private static final int SMALLEST_UNIT = 2;
    private static final int PRIVATE_CREATOR_FIRST = 0x10;
    private static final int PRIVATE_CREATOR_LAST = 0xff;

    static ElementHeader readExplicit(ByteWindow in, int tag, boolean bigEndian) throws IOException {
        long offset = in.position() - 4;
        ValueForm form = ValueForm.of(in.u8(), in.u8())
                .orElseThrow(() -> Fault.malformed(tag, offset, "has a value representation that does not exist"));
        if (!form.longLength()) {
            return new ElementHeader(tag, form.vr(), in.u16(bigEndian), offset).checked(form.unit());
        }
        if (in.position() + 6 > in.size()) {
            throw Fault.malformed(tag, offset, "is cut off before its length");
        }
        if (in.u16(bigEndian) != 0) {
            throw Fault.malformed(tag, offset, "has reserved bytes that are not zero");
        }
        return new ElementHeader(tag, form.vr(), in.u32(bigEndian), offset).checked(form.unit());
    }

    static ElementHeader readImplicit(ByteWindow in, int tag) throws IOException {
        long offset = in.position() - 4;
        return new ElementHeader(tag, dictionaryVr(tag), in.u32(false), offset).checked(SMALLEST_UNIT);
    }

    private static String dictionaryVr(int tag) {
        byte[] vr = AttributeList.getDictionary().getValueRepresentationFromTag(DataSet.toolkitTag(tag));
        return vr == null ? "UN" : new String(vr, StandardCharsets.US_ASCII);
    }

    private ElementHeader checked(int unit) {
        if (isPrivateCreator() && (isUndefined() || vr.equals("SQ"))) {
            throw Fault.malformed(tag, offset, "should hold the name of a private creator, but is a sequence");
        }
        if (!isUndefined() && length % unit != 0) {
            throw Fault.malformed(tag, offset, "has " + length + " bytes, which is not a multiple of " + unit);
        }
        return this;
    }

    boolean isUndefined() {
        return length == UNDEFINED;
    }

    boolean isPrivate() {
        return (tag & 0x10000) != 0;
    }

    private boolean isPrivateCreator() {
        int element = tag & 0xffff;
        return isPrivate() && PRIVATE_CREATOR_FIRST <= element && element <= PRIVATE_CREATOR_LAST;
    }
}
