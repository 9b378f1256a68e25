// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Check;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.Shape;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Refuses hazards and nerves that cannot be told apart or do not lie on the frame. */
final class StructureCheck {
    private StructureCheck() {}

    static void check(PlanMarks marks, FrameGeometry frame) {
        Set<String> names = new HashSet<>();
        List<Hazard> hazards = marks.hazards();
        for (int i = 0; i < hazards.size(); i++) {
            String pointer = "/marks/hazards/" + i;
            name(hazards.get(i).name(), pointer, names);
            Check.notNegative(pointer + "/marginMm", hazards.get(i).marginMm());
            shape(hazards.get(i).shape(), pointer, frame);
        }
        names.clear();
        List<Nerve> nerves = marks.nerves();
        for (int i = 0; i < nerves.size(); i++) {
            String pointer = "/marks/nerves/" + i;
            name(nerves.get(i).name(), pointer, names);
            shape(nerves.get(i).shape(), pointer, frame);
        }
    }

    private static void name(String name, String pointer, Set<String> names) {
        if (name.isBlank() || !names.add(name)) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer + "/name",
                    "The name is empty or used twice.",
                    "Give each structure a name of its own; limits are reported by it."));
        }
    }

    private static void shape(Shape shape, String pointer, FrameGeometry frame) {
        if (shape instanceof Shape.Disc disc) {
            Check.onFrame(pointer + "/disc/center", disc.center(), frame);
        } else if (shape instanceof Shape.Outline outline) {
            for (int i = 0; i < outline.points().size(); i++) {
                Check.onFrame(pointer + "/outline/" + i, outline.points().get(i), frame);
            }
        }
    }
}
