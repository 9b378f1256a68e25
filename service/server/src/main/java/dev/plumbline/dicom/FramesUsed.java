// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.document.FrameProblem;
import dev.plumbline.observation.Phase;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.FrameRole;
import dev.plumbline.record.KeptFrame;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The frames a record speaks of, each once: the planned one first, then the observed ones in their order, then those that are
 * kept for what they show and nothing was made on.
 */
final class FramesUsed {
    /**
     * A frame and what was made on it.
     *
     * @param planned the plan was made on it
     * @param observations indices of the observations made on it
     * @param kept its place among the frames that the case keeps
     */
    record Use(RecordSource.Placed placed, boolean planned, List<Integer> observations, OptionalInt kept) {
        /** Something was made on it, so that it is drawn. */
        boolean measured() {
            return planned || !observations.isEmpty();
        }

        /** Where the case document first names the frame. */
        String pointer() {
            if (!measured()) {
                return "/frames/" + kept.getAsInt() + "/frame";
            }
            return planned ? "/frame" : "/observations/" + observations.get(0) + "/frame";
        }
    }

    private FramesUsed() {}

    /** @throws Refusal for a frame that is not held */
    static List<Use> of(RecordSource source) {
        List<Use> uses = new ArrayList<>();
        CaseDocument document = source.revision().document();
        Map<FrameRef, Integer> kept = kept(document);
        observationsByFrame(document).forEach((ref, observations) -> {
            boolean planned = uses.isEmpty();
            RecordSource.Placed placed = planned ? source.planned() : source.observed(observations.get(0));
            Integer place = kept.remove(ref.with(Optional.empty()));
            uses.add(new Use(
                    placed, planned, observations, place == null ? OptionalInt.empty() : OptionalInt.of(place)));
        });
        kept.forEach(
                (ref, place) -> uses.add(new Use(placed(source, ref, place), false, List.of(), OptionalInt.of(place))));
        return List.copyOf(uses);
    }

    private static Map<FrameRef, Integer> kept(CaseDocument document) {
        Map<FrameRef, Integer> kept = new LinkedHashMap<>();
        for (KeptFrame each : document.bedside().frames()) {
            kept.put(each.frame(), kept.size());
        }
        return kept;
    }

    /** Nothing was measured on it before, so this is where a frame that is not held, or has no such number, is met. */
    private static RecordSource.Placed placed(RecordSource source, FrameRef ref, int place) {
        String pointer = "/frames/" + place + "/frame";
        try {
            return source.frame(ref, pointer);
        } catch (Refusal refusal) {
            throw new Refusal(FrameProblem.at(pointer, refusal.problem()));
        }
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

    /** What a frame shows, for the image library: as the case says it; else the first observation's phase, or the plan alone. */
    static Code role(Use use, CaseDocument document) {
        if (use.kept().isPresent()) {
            FrameRole stated =
                    document.bedside().frames().get(use.kept().getAsInt()).role();
            return Codes.ofWord("image roles", stated.word());
        }
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
