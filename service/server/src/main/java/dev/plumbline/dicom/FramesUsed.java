// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.observation.Phase;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The frames a record speaks of, each once: the planned one first, then the observed ones in their order. */
final class FramesUsed {
    /**
     * A frame and what was made on it.
     *
     * @param planned the plan was made on it
     * @param observations indices of the observations made on it
     */
    record Use(RecordSource.Placed placed, boolean planned, List<Integer> observations) {
        /** Where the case document first names the frame. */
        String pointer() {
            return planned ? "/frame" : "/observations/" + observations.get(0) + "/frame";
        }
    }

    private FramesUsed() {}

    /** @throws dev.plumbline.problem.Refusal for a frame that is not held */
    static List<Use> of(RecordSource source) {
        List<Use> uses = new ArrayList<>();
        observationsByFrame(source.revision().document()).forEach((ref, observations) -> {
            boolean planned = uses.isEmpty();
            RecordSource.Placed placed = planned ? source.planned() : source.observed(observations.get(0));
            uses.add(new Use(placed, planned, observations));
        });
        return List.copyOf(uses);
    }

    /** The planned frame first; indices of the observations made on each. */
    static Map<FrameRef, List<Integer>> observationsByFrame(CaseDocument document) {
        Map<FrameRef, List<Integer>> frames = new LinkedHashMap<>();
        frames.put(document.frame(), new ArrayList<>());
        for (int i = 0; i < document.observations().size(); i++) {
            frames.computeIfAbsent(document.observations().get(i).frame(), ref -> new ArrayList<>())
                    .add(i);
        }
        return frames;
    }

    /** What a frame shows, for the image library: the first observation's phase, or the plan alone. */
    static Code role(Use use, CaseDocument document) {
        if (use.observations().isEmpty()) {
            return Codes.own("FR-PRESCAN");
        }
        Optional<Phase> phase =
                document.observations().get(use.observations().get(0)).marks().phase();
        return Codes.own(phase.map(FramesUsed::role).orElse("FR-OTHER"));
    }

    private static String role(Phase phase) {
        return switch (phase) {
            case FINAL_TIP -> "FR-NEEDLE";
            case DURING_INJECTION, AFTER_SPREAD -> "FR-SPREAD";
            case CATHETER -> "FR-CATHETER";
            case PRACTICE -> "FR-OTHER";
        };
    }
}
