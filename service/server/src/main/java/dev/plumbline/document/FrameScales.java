// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.geometry.KnownDistance;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One frame has one scale, however often a case names the frame: where it is stated once it holds for every mention.
 */
public final class FrameScales {
    private static final Optional<KnownDistance> NOT_STATED = Optional.empty();

    private final Map<FrameRef, KnownDistance> byFrame = new HashMap<>();

    private FrameScales() {}

    /**
     * The case with the scale of each frame at every mention of it.
     *
     * @throws Refusal where two scales are stated for one frame
     */
    public static CaseDocument shared(CaseDocument document) {
        List<FrameRef> observed =
                document.observations().stream().map(o -> o.frame()).toList();
        if (Stream.concat(Stream.of(document.frame()), observed.stream())
                .allMatch(ref -> ref.scale().isEmpty())) {
            return document;
        }
        FrameScales scales = new FrameScales();
        scales.learn(document.frame(), "/frame");
        for (int i = 0; i < observed.size(); i++) {
            scales.learn(observed.get(i), "/observations/" + i + "/frame");
        }
        return document.withFrames(
                scales.told(document.frame()),
                observed.stream().map(scales::told).toList());
    }

    private void learn(FrameRef ref, String pointer) {
        ref.scale().ifPresent(scale -> {
            KnownDistance first = byFrame.putIfAbsent(ref.with(NOT_STATED), scale);
            if (first != null && !first.equals(scale)) {
                throw new Refusal(new Problem.ContradictoryFields(
                        pointer + "/scale",
                        "Two different scales are stated for the same frame.",
                        "State one scale; it holds wherever the case names the frame."));
            }
        });
    }

    private FrameRef told(FrameRef ref) {
        return ref.with(Optional.ofNullable(byFrame.get(ref.with(NOT_STATED))));
    }
}
