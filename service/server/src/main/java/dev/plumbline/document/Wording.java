// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import java.util.regex.Pattern;

/** What a string in the document may be. The bounds are those of the DICOM attributes the text ends in (PS3.5, 6.2). */
enum Wording {
    /** LO and each part of PN: 64 characters, no control characters, no backslash. */
    NAME(
            "[^\\p{Cntrl}\\x{80}-\\x{9f}\\p{Cs}\\\\]{1,64}",
            "a text of 1 to 64 characters without control characters or backslash"),
    /** SH: 16 characters. */
    SHORT(
            "[^\\p{Cntrl}\\x{80}-\\x{9f}\\p{Cs}\\\\]{1,16}",
            "a text of 1 to 16 characters without control characters or backslash"),
    /** CS: 16 capital letters, digits, spaces and underscores. */
    CODE("[A-Z0-9_ ]{1,16}", "1 to 16 capital letters, digits, spaces or underscores"),
    DATE("\\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\\d|3[01])", "a date such as 1970-01-31"),
    /** Used in addresses and file-free keys, so only what needs no escaping anywhere (design choice). */
    IDENTIFIER("[A-Za-z0-9][A-Za-z0-9._-]{0,63}", "1 to 64 letters, digits, dots, hyphens or underscores"),
    /** PS3.5, 9.1; leading zeros of a component are read, not written by us. */
    UID("(?=.{1,64}$)[0-9]+(\\.[0-9]+)*", "a UID of digits and dots, up to 64 characters"),
    /** Free words; UT has no such bound (design choice). */
    REMARK("[^\\p{Cntrl}\\x{80}-\\x{9f}\\p{Cs}]{1,1024}", "a text of 1 to 1024 characters without control characters"),
    PATH("[^\\p{Cntrl}\\x{80}-\\x{9f}\\p{Cs}]{1,1024}", "a path of up to 1024 characters");

    private final Pattern pattern;
    private final String words;

    Wording(String pattern, String words) {
        this.pattern = Pattern.compile(pattern);
        this.words = words;
    }

    /** Whether the text fits as it is taken in; blank never does. */
    boolean takes(String text) {
        return !text.isBlank() && pattern.matcher(taken(text)).matches();
    }

    /**
     * The text as it is taken in: white space around what is said does not survive a DICOM report, so it never becomes part
     * of the case (PS3.5, 6.2: leading and trailing spaces are not significant in LO and PN, trailing ones in UT).
     */
    String taken(String text) {
        return this == NAME || this == REMARK ? text.strip() : text;
    }

    String words() {
        return words;
    }
}
