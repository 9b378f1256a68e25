// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.record.CaseDocument;
import java.util.ArrayList;
import java.util.List;

/**
 * What a case does not say yet and its numbers would need, in words for who can say it.
 *
 * @param field of the case document, as a pointer
 */
public record Lack(String field, String text) {
    /** What lacks in a case that is open; what it lacks for a signature is another list. */
    public static List<Lack> of(CaseDocument document) {
        List<Lack> lacks = new ArrayList<>();
        if (document.technique().isEmpty()) {
            lacks.add(new Lack(
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
            var marks = document.observations().get(i).marks();
            if (marks.tip().isPresent() && marks.tipIsTip().isEmpty()) {
                lacks.add(new Lack(
                        "/observations/" + i + "/tipIsTip",
                        "Whether the point marked as tip is the tip itself, or only the deepest part seen."));
            }
        }
        return List.copyOf(lacks);
    }
}
