// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.SerializedString;
import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.geometry.Reason;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Readings as JSON: {@code {value, standardUncertainty, expandedUncertainty}}, or {@code {value: null, reason}}. */
final class Quantities {
    private static final SerializableString VALUE = new SerializedString("value");
    private static final SerializableString STANDARD = new SerializedString("standardUncertainty");
    private static final SerializableString EXPANDED = new SerializedString("expandedUncertainty");
    private static final SerializableString EXCEEDS = new SerializedString("exceedsUncertainty");
    private static final SerializableString REASON = new SerializedString("reason");

    private static final Reading ELSEWHERE = Reading.notSeen(Reason.NOT_IN_THIS_PLANE);

    /** An answer holds some hundred of few different names; this way they are escaped once. */
    private static final Map<String, SerializableString> NAMES = new ConcurrentHashMap<>();

    private Quantities() {}

    static void quantity(AnswerWriter out, String name, Reading reading) {
        quantity(out, known(name), reading, false);
    }

    static <M extends Enum<M> & Measurand> void all(AnswerWriter out, Readings<M> readings) {
        for (M measurand : readings.measurands()) {
            quantity(out, known(measurand.field()), readings.of(measurand), false);
        }
    }

    /**
     * Every quantity of a kind: one that belongs to the other approach is there too, and says that it does not lie in the
     * plane that is looked at.
     */
    static <M extends Enum<M> & Measurand> void each(AnswerWriter out, Readings<M> readings, M[] kind) {
        for (M measurand : kind) {
            quantity(
                    out, known(measurand.field()), readings.has(measurand) ? readings.of(measurand) : ELSEWHERE, false);
        }
    }

    /** Quantities that also say whether they differ from zero by more than their expanded uncertainty. */
    static <M extends Enum<M> & Measurand> void eachDifference(AnswerWriter out, Readings<M> readings, M[] kind) {
        for (M measurand : kind) {
            quantity(out, known(measurand.field()), readings.has(measurand) ? readings.of(measurand) : ELSEWHERE, true);
        }
    }

    static void mark(AnswerWriter out, String name, Optional<PointPx> point) {
        if (point.isEmpty()) {
            out.putNull(name);
            return;
        }
        out.object(
                name,
                () -> out.put("column", point.get().column())
                        .put("row", point.get().row()));
    }

    private static void quantity(AnswerWriter out, SerializableString name, Reading reading, boolean difference) {
        out.step(json -> {
            json.writeFieldName(name);
            json.writeStartObject();
            if (reading instanceof Reading.Seen seen) {
                number(json, VALUE, seen.value() + 0.0); // no negative zero
                number(json, STANDARD, seen.standardUncertainty());
                number(json, EXPANDED, seen.expandedUncertainty());
                if (difference) {
                    json.writeFieldName(EXCEEDS);
                    json.writeBoolean(seen.exceedsUncertainty());
                }
            } else {
                json.writeFieldName(VALUE);
                json.writeNull();
                json.writeFieldName(REASON);
                json.writeString(((Reading.NotSeen) reading).reason().word());
            }
            json.writeEndObject();
        });
    }

    private static void number(JsonGenerator json, SerializableString name, double value) throws IOException {
        json.writeFieldName(name);
        json.writeNumber(value);
    }

    private static SerializableString known(String name) {
        SerializableString known = NAMES.get(name);
        return known == null ? NAMES.computeIfAbsent(name, SerializedString::new) : known;
    }
}
