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
    record Use(RecordSource.Placed placed, boolean planned, List<Integer> observations) {}

    private FramesUsed() {}

    /** @throws dev.plumbline.problem.Refusal for a frame that is not held */
    static List<Use> of(RecordSource source) {
        CaseDocument document = source.revision().document();
        Map<FrameRef, Use> uses = new LinkedHashMap<>();
        uses.put(document.frame(), new Use(source.planned(), true, new ArrayList<>()));
        for (int i = 0; i < document.observations().size(); i++) {
            int index = i;
            uses.computeIfAbsent(
                            document.observations().get(i).frame(),
                            ref -> new Use(source.observed(index), false, new ArrayList<>()))
                    .observations()
                    .add(i);
        }
        return List.copyOf(uses.values());
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
