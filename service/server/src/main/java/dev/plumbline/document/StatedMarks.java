// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.geometry.NamedMark;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Shape;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.PlanMarks;
import dev.plumbline.record.CaseDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Every mark of a case with its place in the document. */
public final class StatedMarks {
    private final List<NamedMark> marks = new ArrayList<>();

    private StatedMarks() {}

    /** On the planned frame. */
    static List<NamedMark> ofPlan(CaseDocument document) {
        StatedMarks all = new StatedMarks();
        PlanMarks marks = document.marks();
        all.add(marks.target(), "/marks/target");
        all.add(document.probe().midpoint(), "/probe/midpoint");
        all.add(marks.skin(), "/marks/skin");
        for (int i = 0; i < marks.nerves().size(); i++) {
            all.add(marks.nerves().get(i).shape(), "/marks/nerves/" + i);
        }
        for (int i = 0; i < marks.hazards().size(); i++) {
            all.add(marks.hazards().get(i).shape(), "/marks/hazards/" + i);
        }
        if (document.intent().orElse(null) instanceof Intent.EntryMark entry) {
            all.add(entry.at(), "/intent/entry");
        }
        return all.marks;
    }

    /** On the frame of one observation. */
    static List<NamedMark> ofObservation(CaseDocument document, int index) {
        StatedMarks all = new StatedMarks();
        ObservationMarks marks = document.observations().get(index).marks();
        String at = "/observations/" + index;
        all.add(marks.shaft(), at + "/shaft");
        all.add(marks.tip(), at + "/tip");
        all.add(marks.midpoint(), at + "/midpoint");
        all.add(marks.target(), at + "/target");
        all.add(marks.skin(), at + "/skin");
        return all.marks;
    }

    /** Those that were set several times. */
    public static List<NamedMark> repeated(CaseDocument document) {
        StatedMarks all = new StatedMarks();
        all.marks.addAll(ofPlan(document));
        for (int i = 0; i < document.observations().size(); i++) {
            all.marks.addAll(ofObservation(document, i));
        }
        return all.marks.stream().filter(mark -> !mark.at().repeats().isEmpty()).toList();
    }

    private void add(Shape shape, String pointer) {
        if (shape instanceof Shape.Outline outline) {
            add(outline.points(), pointer + "/outline");
        } else {
            add(((Shape.Disc) shape).center(), pointer + "/disc/center");
        }
    }

    private void add(List<PointPx> points, String pointer) {
        for (int i = 0; i < points.size(); i++) {
            add(points.get(i), pointer + "/" + i);
        }
    }

    private void add(Optional<PointPx> point, String pointer) {
        point.ifPresent(p -> add(p, pointer));
    }

    private void add(PointPx point, String pointer) {
        marks.add(new NamedMark(pointer, point));
    }
}
