// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.geometry.NamedMark;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a case does not say yet and its numbers would need, in words for who can say it.
 *
 * @param field of the case document, as a pointer
 */
public record Lack(String field, String text) {
    /**
     * What lacks in a case that is open; what it lacks for a signature is another list.
     *
     * @param frames tells whether the scale is known where something was marked
     */
    public static List<Lack> of(CaseDocument document, CaseInputs.Frames frames) {
        List<Lack> lacks = new ArrayList<>();
        NamedMark target = new NamedMark("/marks/target", document.marks().target());
        scale(document.frame(), "/frame", List.of(target), frames).ifPresent(lacks::add);
        if (document.technique().isEmpty()) {
            lacks.add(
                    new Lack(
                            "/approach",
                            "Whether the needle goes in-plane or out-of-plane: marks do not tell. Without it nothing is computed."));
        }
        if (document.marks().skin().isEmpty()) {
            lacks.add(new Lack(
                    "/marks/skin",
                    "The skin line: draw it under the probe. Without it angles to the skin are unknown."));
        }
        if (document.probe().midpoint().isEmpty()) {
            lacks.add(new Lack(
                    "/probe/midpoint",
                    "The middle of the probe's face: mark it. Without it entry distances are unknown."));
        }
        if (document.probe().footprintMm().isEmpty()) {
            lacks.add(new Lack("/probe/footprintMm", "The length of the probe's face, in millimetres."));
        }
        if (document.probe().needleSide().isEmpty()) {
            lacks.add(new Lack("/probe/needleSide", "The side of the image the needle comes from."));
        }
        if (document.needle().lengthMm().isEmpty()) {
            lacks.add(
                    new Lack("/needle/lengthMm", "The needle's length: without it nobody can say whether it reaches."));
        }
        if (document.intent().isEmpty()) {
            lacks.add(
                    new Lack("/intent", "Which path is meant: a person confirms the proposed one, or states another."));
        }
        if (document.observations().isEmpty()) {
            lacks.add(new Lack("/observations", "The needle: draw its shaft on a frame that shows it."));
        }
        for (int i = 0; i < document.observations().size(); i++) {
            ObservationMarks marks = document.observations().get(i).marks();
            if (marks.tip().isPresent() && marks.tipIsTip().isEmpty()) {
                lacks.add(new Lack(
                        "/observations/" + i + "/tipIsTip",
                        "Whether the point marked as tip is the tip itself, or only the deepest part seen."));
            }
            String at = "/observations/" + i;
            FrameRef frame = document.observations().get(i).frame();
            if (!frame.equals(document.frame())) {
                scale(frame, at + "/frame", needle(marks, at), frames).ifPresent(lacks::add);
            }
        }
        return List.copyOf(lacks);
    }

    /** Why nothing can be measured between the marks on a frame, and what helps; empty where its scale is known there. */
    private static Optional<Lack> scale(FrameRef frame, String at, List<NamedMark> marks, CaseInputs.Frames frames) {
        if (marks.isEmpty()) {
            return Optional.empty();
        }
        try {
            CaseInputs.geometry(frame, at, frames).calibration(at, marks);
            return Optional.empty();
        } catch (Refusal refusal) {
            Problem problem = refusal.problem();
            if (problem instanceof Problem.FrameNotCalibrated || problem instanceof Problem.OutsideMeasuringRegion) {
                return Optional.of(new Lack(at + "/scale", problem.detail() + " " + problem.remedy()));
            }
            throw refusal;
        }
    }

    private static List<NamedMark> needle(ObservationMarks marks, String at) {
        List<NamedMark> needle = new ArrayList<>();
        for (int i = 0; i < marks.shaft().size(); i++) {
            needle.add(new NamedMark(at + "/shaft/" + i, marks.shaft().get(i)));
        }
        marks.tip().ifPresent(tip -> needle.add(new NamedMark(at + "/tip", tip)));
        return needle;
    }
}
