// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.List;
import java.util.Optional;

/**
 * Dates and times of a frame as they are written today: old scanners wrote {@code 1997.04.24} and {@code 14:04:38}, the
 * same moment in a form that is no longer a value. Everything else is copied as it is. Source: DICOM PS3.5 6.2, DA and TM.
 */
final class CurrentForm {
    private static final String OLD_DATE = "\\d{4}\\.\\d{2}\\.\\d{2}";
    private static final String OLD_TIME = "\\d{2}:\\d{2}(:\\d{2}(\\.\\d{1,6})?)?";

    private CurrentForm() {}

    static String[] values(DataSet frame, int tag) {
        List<String> values = frame.strings(tag);
        return values.stream()
                .map(value -> current(frame.vr(tag).orElse(""), value))
                .toArray(String[]::new);
    }

    /** The first value; empty where absent or blank. */
    static Optional<String> value(DataSet frame, int tag) {
        return frame.string(tag).map(value -> current(frame.vr(tag).orElse(""), value));
    }

    private static String current(String vr, String value) {
        if (vr.equals("DA") && value.matches(OLD_DATE)) {
            return value.replace(".", "");
        }
        return vr.equals("TM") && value.matches(OLD_TIME) ? value.replace(":", "") : value;
    }
}
