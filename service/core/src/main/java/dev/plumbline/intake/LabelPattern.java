// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.intake;

import java.util.regex.Pattern;

/** A regular expression for the whole of a label, in any case; equal to another of the same text. */
public final class LabelPattern {
    /** Longer labels are not looked at, so that no expression works on them for long. */
    private static final int LONGEST_LABEL = 256;

    private final String text;
    private final Pattern pattern;

    /**
     * Compiles an expression.
     *
     * @throws java.util.regex.PatternSyntaxException when it is none
     */
    public LabelPattern(String text) {
        this.text = text;
        pattern = Pattern.compile(text, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    }

    boolean matches(String label) {
        return label.length() <= LONGEST_LABEL && pattern.matcher(label.strip()).matches();
    }

    @Override
    public boolean equals(@org.jspecify.annotations.Nullable Object other) {
        return other instanceof LabelPattern that && text.equals(that.text);
    }

    @Override
    public int hashCode() {
        return text.hashCode();
    }

    @Override
    public String toString() {
        return text;
    }
}
