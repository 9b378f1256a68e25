// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a frame tells about the probe that made it. It is shown and offered, never used in place of what a person states.
 *
 * @param kind empty where the frame does not tell
 * @param footprintMm length of the face along the image plane; of a curved array the chord between its ends
 * @param arcRadiusMm radius of a curved face
 * @param midpoint of the face on the frame
 * @param why one sentence for each thing that was seen or is missing
 */
public record ProbeEstimate(
        Optional<Probe.Kind> kind,
        OptionalDouble footprintMm,
        OptionalDouble arcRadiusMm,
        Optional<PointPx> midpoint,
        Confidence confidence,
        List<String> why) {
    /** How far the estimate may be leant on. */
    public enum Confidence {
        /** The object itself names the kind of array. */
        STATED("stated"),
        /** The outline of the insonated area leaves one reading. */
        HIGH("high"),
        /** Another reading is possible, or nothing was found: state it. */
        LOW("low");

        private final String word;

        Confidence(String word) {
            this.word = word;
        }

        /** The name in JSON. */
        public String word() {
            return word;
        }
    }

    public ProbeEstimate {
        why = List.copyOf(why);
    }

    static ProbeEstimate unknown(String why) {
        return new ProbeEstimate(
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Confidence.LOW,
                List.of(why));
    }

    ProbeEstimate as(Confidence other, String reason) {
        List<String> reasons = new java.util.ArrayList<>(List.of(reason));
        reasons.addAll(why);
        return new ProbeEstimate(kind, footprintMm, arcRadiusMm, midpoint, other, reasons);
    }
}
