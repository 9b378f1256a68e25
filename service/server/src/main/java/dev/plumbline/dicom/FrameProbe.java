// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ProbeEstimate.Confidence;
import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.UltrasoundRegion;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The probe by what the object names first, then by the outline of the echoes; the two must agree. */
final class FrameProbe {
    private static final PixelSize SQUARE = new PixelSize(1, 1);

    private FrameProbe() {}

    static ProbeEstimate of(
            DataSet header, FrameGeometry geometry, Optional<Calibration> calibration, BufferedImage image) {
        Optional<Probe.Kind> named = ProbeTags.kind(header);
        Optional<String> other = ProbeTags.otherType(header);
        if (named.isEmpty() && other.isPresent()) {
            return ProbeEstimate.unknown(
                    Fault.name(Tag.TRANSDUCER_TYPE) + " names an array that is neither linear nor curved.");
        }
        ProbeEstimate seen = seen(geometry, calibration, image);
        return named.map(kind -> agreed(kind, seen)).orElse(seen);
    }

    private static ProbeEstimate agreed(Probe.Kind named, ProbeEstimate seen) {
        String reason = "The object names a " + named.word() + " array.";
        if (seen.kind().equals(Optional.of(named))) {
            return seen.as(Confidence.STATED, reason);
        }
        boolean contradicts = seen.kind().isPresent() && seen.confidence() == Confidence.HIGH;
        List<String> why = contradicts
                ? List.of(reason, "But the outline of the echoes is that of the other kind: state probe.kind.")
                : List.of(reason, "The outline of the echoes does not show its face: state footprint and midpoint.");
        return new ProbeEstimate(
                Optional.of(named),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                contradicts ? Confidence.LOW : Confidence.STATED,
                why);
    }

    private static ProbeEstimate seen(FrameGeometry geometry, Optional<Calibration> calibration, BufferedImage image) {
        Optional<Region> used = calibration.flatMap(Calibration::region);
        Region whole = new Region(0, 0, 0, geometry.columns() - 1, geometry.rows() - 1);
        Optional<UltrasoundRegion> region =
                used.map(bounds -> geometry.regions().get(bounds.index()));
        ProbeEstimate seen = new ProbeFinder(
                        InsonatedArea.of(image, used.orElse(whole)),
                        calibration.map(Calibration::pixel).orElse(SQUARE),
                        region)
                .find();
        return calibration.isPresent() ? seen : withoutLengths(seen);
    }

    /** Without a scale nothing has a length, and pixels that are not square would bend every angle. */
    private static ProbeEstimate withoutLengths(ProbeEstimate seen) {
        return new ProbeEstimate(
                seen.kind(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                seen.midpoint(),
                Confidence.LOW,
                seen.why());
    }
}
