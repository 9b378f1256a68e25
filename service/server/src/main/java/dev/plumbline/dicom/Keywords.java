// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.AttributeTag;
import com.pixelmed.dicom.DicomDictionary;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/** Attribute names as a query writes them: eight hexadecimal digits or the keyword of DICOM PS3.6. */
public final class Keywords {
    private static final Pattern EIGHT_DIGITS = Pattern.compile("[0-9A-Fa-f]{8}");
    private static final int HEXADECIMAL = 16;

    private Keywords() {}

    /** The tag that a name stands for; empty where no attribute has that name. Source: DICOM PS3.18 8.3.4.1. */
    public static OptionalInt tag(String name) {
        if (EIGHT_DIGITS.matcher(name).matches()) {
            return OptionalInt.of(Integer.parseUnsignedInt(name, HEXADECIMAL));
        }
        AttributeTag tag = DicomDictionary.StandardDictionary.getTagFromName(name);
        return tag == null ? OptionalInt.empty() : OptionalInt.of(tag.getGroup() << 16 | tag.getElement());
    }
}
