// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.AttributeList;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.Optional;

/** Words for what is wrong with a file: attribute and byte offset, never a value. */
final class Fault {
    static final String SEND_AGAIN =
            "Send the object again from where it was made; if it stays like this, its writer breaks the standard.";

    private Fault() {}

    static Refusal malformed(int tag, long offset, String what) {
        return malformed(place(tag, offset) + " " + what);
    }

    static Refusal malformed(String what) {
        return new Refusal(new Problem.MalformedObject("", what + ".", SEND_AGAIN));
    }

    static Refusal unsupported(String what, String remedy) {
        return new Refusal(new Problem.UnsupportedObject("", what + ".", remedy));
    }

    static String place(int tag, long offset) {
        return name(tag) + " at byte " + offset;
    }

    /** Keyword and number of a tag, such as {@code Rows (0028,0010)}. */
    static String name(int tag) {
        String number = "(" + Tag.text(tag) + ")";
        return Optional.ofNullable(AttributeList.getDictionary().getNameFromTag(DataSet.toolkitTag(tag)))
                .map(keyword -> keyword + " " + number)
                .orElse(number);
    }
}
