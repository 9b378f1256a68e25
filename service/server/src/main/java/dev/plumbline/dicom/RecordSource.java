// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Uids;
import java.util.HashMap;
import java.util.Map;

/** Everything one record is made from; the same source always gives the same bytes. */
record RecordSource(RecordRevision revision, Installation installation, RecordFrames frames) {
    RecordSource {
        frames = remembering(frames);
    }

    /** Finding a frame reads and renders it, so each is found once; a scale that the case states goes with it. */
    private static RecordFrames remembering(RecordFrames frames) {
        Map<FrameRef.Held, RecordFrame> found = new HashMap<>();
        return ref -> found.computeIfAbsent(ref, r -> frames.of(r).with(r.scale()));
    }

    /** A frame of the case together with the reference to it. */
    record Placed(FrameRef.Held ref, RecordFrame frame) {
        ItemValue.Instance instance() {
            return frame.instance(ref.frameNumber());
        }

        FrameMarks marks() {
            return new FrameMarks(instance());
        }
    }

    /**
     * Finds a frame of the case.
     *
     * @param pointer of the reference in the case document
     * @throws Refusal when the case speaks of no DICOM frame there, or of one that is not held
     */
    Placed frame(FrameRef ref, String pointer) {
        if (ref instanceof FrameRef.Held held) {
            return new Placed(held, frames.of(held));
        }
        throw new Refusal(new Problem.InvalidValue(
                pointer,
                "A record needs frames of DICOM objects; this one is none.",
                "Give the sopInstanceUid and frameNumber of a frame that is held."));
    }

    Placed planned() {
        return frame(revision.document().frame(), "/frame");
    }

    Placed observed(int index) {
        return frame(revision.document().observations().get(index).frame(), "/observations/" + index + "/frame");
    }

    String trackingUid(String name) {
        return Uids.tracking(revision.caseId(), name);
    }
}
