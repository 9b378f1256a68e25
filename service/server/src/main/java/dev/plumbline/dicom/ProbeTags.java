// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.Probe;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The shape of the array as the object names it. <b>Source:</b> DICOM PS3.3 C.8.5.6 (Transducer Type, defined terms);
 * PS3.16 CID 12033 (Ultrasound Transducer Geometry).
 */
final class ProbeTags {
    private static final Map<String, Probe.Kind> TYPES = Map.of(
            "LINEAR", Probe.Kind.LINEAR,
            "ENDOCAV_LINEAR", Probe.Kind.LINEAR,
            "CURVED LINEAR", Probe.Kind.CURVED,
            "ENDOCAV_CLA", Probe.Kind.CURVED);
    private static final Map<String, Probe.Kind> CODES =
            Map.of("125252", Probe.Kind.LINEAR, "125253", Probe.Kind.CURVED);

    private ProbeTags() {}

    static Optional<Probe.Kind> kind(DataSet header) {
        return statements(header).stream()
                .flatMap(
                        source -> Optional.ofNullable(
                                TYPES.get(source.string(Tag.TRANSDUCER_TYPE).orElse("")))
                                .or(() -> coded(source))
                                .stream())
                .findFirst();
    }

    /** A type that is named but is neither linear nor curved. */
    static Optional<String> otherType(DataSet header) {
        return statements(header).stream()
                .flatMap(source -> source.string(Tag.TRANSDUCER_TYPE).stream())
                .filter(type -> !TYPES.containsKey(type))
                .findFirst();
    }

    private static Optional<Probe.Kind> coded(DataSet source) {
        return source.items(Tag.TRANSDUCER_GEOMETRY_CODE_SEQUENCE).stream()
                .flatMap(code -> Optional.ofNullable(
                        CODES.get(code.string(Tag.CODE_VALUE).orElse("")))
                        .stream())
                .findFirst();
    }

    private static List<DataSet> statements(DataSet header) {
        List<DataSet> sources = new java.util.ArrayList<>(FrameGeometryReader.sources(header, 1));
        sources.addAll(header.items(Tag.SEQUENCE_OF_ULTRASOUND_REGIONS));
        return sources;
    }
}
