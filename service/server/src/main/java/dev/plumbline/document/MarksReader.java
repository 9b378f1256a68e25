// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Shape;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.Nerve;
import dev.plumbline.plan.PlanMarks;
import dev.plumbline.plan.TargetKind;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/** Reads the marks on the planned frame. */
final class MarksReader {
    private MarksReader() {}

    static PlanMarks marks(Fields document) {
        Fields marks = document.object("marks", CaseObject.MARKS)
                .orElseThrow(() -> missingTarget(document.pointer("marks") + "/target"));
        PointPx target = marks.point("target").orElseThrow(() -> missingTarget(marks.pointer("target")));
        return new PlanMarks(
                target,
                marks.word("targetKind", List.of(TargetKind.values()), TargetKind::word),
                marks.points("skin", 2),
                named(marks, "nerves", CaseObject.NERVE, MarksReader::nerve, Nerve::name),
                named(marks, "hazards", CaseObject.HAZARD, MarksReader::hazard, Hazard::name));
    }

    private static Refusal missingTarget(String pointer) {
        return new Refusal(new Problem.MissingField(
                pointer, "Mark the point where the tip is meant to stop: {\"column\", \"row\"}."));
    }

    /** Structures whose names an answer can speak of without doubt. */
    private static <T> List<T> named(
            Fields marks, String list, CaseObject kind, Function<Fields, T> reading, Function<T, String> name) {
        Set<String> names = new HashSet<>();
        return marks.objects(list, kind, fields -> {
            T structure = reading.apply(fields);
            if (!names.add(name.apply(structure))) {
                throw new Refusal(new Problem.InvalidValue(
                        fields.pointer("name"),
                        "Two of the " + list + " have the same name.",
                        "Name each differently."));
            }
            return structure;
        });
    }

    private static Nerve nerve(Fields fields) {
        return new Nerve(fields.needText("name", Wording.NAME), shape(fields));
    }

    private static Hazard hazard(Fields fields) {
        return new Hazard(
                fields.needText("name", Wording.NAME),
                fields.word("kind", List.of(Hazard.Kind.values()), Hazard.Kind::word)
                        .orElse(Hazard.Kind.OTHER),
                fields.number("marginMm", Range.DISTANCE),
                shape(fields));
    }

    private static Shape shape(Fields fields) {
        if (fields.has("disc") == fields.has("outline")) {
            throw fields.contradiction(
                    "A structure is drawn either as a disc or as an outline.", "Give exactly one of them.");
        }
        if (fields.has("outline")) {
            List<PointPx> outline = fields.points("outline", 3);
            if (outline.isEmpty()) {
                throw Fields.refusal(fields.pointer("outline"), "at least 3 points");
            }
            return new Shape.Outline(outline);
        }
        Fields disc = fields.object("disc", CaseObject.DISC).orElseThrow();
        return new Shape.Disc(
                disc.point("center").orElseThrow(() -> disc.missing("center", "the point at its middle")),
                disc.needNumber("radiusMm", Range.LENGTH));
    }
}
