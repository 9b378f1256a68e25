// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Which grey values are shown from black to white, in units after the modality transformation.
 *
 * <p>Source: DICOM PS3.3, C.11.2.1.2 (LINEAR) and C.11.2.1.3 (SIGMOID, LINEAR_EXACT).
 *
 * @param width at least 1 for {@link Function#LINEAR}, else above 0
 */
public record Window(double center, double width, Function function) {
    private static final String NUMBER = "[-+]?\\d{1,9}(?:\\.\\d{1,9})?";
    private static final Pattern TEXT =
            Pattern.compile("\\s*(" + NUMBER + ")\\s*,\\s*(" + NUMBER + ")\\s*(?:,\\s*([a-zA-Z_-]+)\\s*)?");

    /** VOI LUT Function (0028,1056). */
    public enum Function {
        LINEAR,
        LINEAR_EXACT,
        SIGMOID;

        /** As in a request: lower case with a hyphen. Source: DICOM PS3.18, 8.3.5.1.4. */
        String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    public Window {
        if (!(width > 0) || (function == Function.LINEAR && width < 1) || !Double.isFinite(center + width)) {
            throw new IllegalArgumentException("A window has a width.");
        }
    }

    /**
     * A window as a request states it: {@code center,width} or {@code center,width,function}; linear where no function is
     * named.
     *
     * @throws Refusal {@link Problem.InvalidValue}
     */
    public static Window of(String text) {
        Matcher matcher = TEXT.matcher(text);
        if (!matcher.matches()) {
            throw unreadable();
        }
        String word = matcher.group(3) == null ? Function.LINEAR.word() : matcher.group(3);
        Function function = Arrays.stream(Function.values())
                .filter(f -> f.word().equals(word.toLowerCase(Locale.ROOT).replace('_', '-')))
                .findFirst()
                .orElseThrow(Window::unreadable);
        double width = Double.parseDouble(matcher.group(2));
        if (!(width > 0) || (function == Function.LINEAR && width < 1)) {
            throw new Refusal(new Problem.InvalidValue(
                    "",
                    "The width of the window is too small.",
                    "Give a width of 1 or more, or above 0 with linear-exact or sigmoid."));
        }
        return new Window(Double.parseDouble(matcher.group(1)), width, function);
    }

    private static Refusal unreadable() {
        return new Refusal(new Problem.InvalidValue(
                "",
                "The window is not readable.",
                "Write center,width or center,width,function as in 128,256,linear; functions are "
                        + Arrays.stream(Function.values()).map(Function::word).collect(Collectors.joining(", "))
                        + "."));
    }

    /** From a grey value to the share of white, below 0 and above 1 outside the window of the exact function. */
    DoubleUnaryOperator shares() {
        return switch (function) {
            case SIGMOID -> value -> 1 / (1 + Math.exp(-4 * (value - center) / width));
            case LINEAR_EXACT -> value -> (value - center) / width + 0.5;
            case LINEAR -> this::linear;
        };
    }

    private double linear(double value) {
        if (value <= center - 0.5 - (width - 1) / 2) {
            return 0;
        }
        if (value > center - 0.5 + (width - 1) / 2) {
            return 1;
        }
        return (value - (center - 0.5)) / (width - 1) + 0.5;
    }
}
