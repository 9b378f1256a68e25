// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.Attribute;
import com.pixelmed.dicom.AttributeList;
import com.pixelmed.dicom.SequenceAttribute;

/** How many attributes the toolkit holds, counted as the gate counts: a private sequence is one. */
final class AttributeCount {
    private AttributeCount() {}

    /** Recurses as deep as the gate lets sequences nest. */
    static int of(AttributeList attributes) {
        int count = 0;
        for (Attribute attribute : attributes.values()) {
            count++;
            if (attribute instanceof SequenceAttribute sequence
                    && !attribute.getTag().isPrivate()) {
                for (int item = 0; item < sequence.getNumberOfItems(); item++) {
                    count += of(sequence.getItem(item).getAttributeList());
                }
            }
        }
        return count;
    }
}
