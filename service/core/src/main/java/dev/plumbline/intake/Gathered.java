// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.intake;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.intake.ForeignMark.Form;
import dev.plumbline.plan.Hazard;
import java.util.List;
import java.util.Optional;

/**
 * The marks of a study, each accounted for.
 *
 * @param placed those that hold, each with its meaning
 * @param unmatched those that no rule knows
 * @param questions what only a person can answer; the marks concerned are not placed
 * @param refused objects of which nothing was taken
 * @param remarks what was noticed and does not stop anything
 */
public record Gathered(
        List<Placed> placed,
        List<Unmatched> unmatched,
        List<Question> questions,
        List<RefusedObject> refused,
        List<Remark> remarks) {
    public Gathered {
        placed = List.copyOf(placed);
        unmatched = List.copyOf(unmatched);
        questions = List.copyOf(questions);
        refused = List.copyOf(refused);
        remarks = List.copyOf(remarks);
    }

    /** One frame of one image. */
    public record FrameKey(String image, int number) {}

    /**
     * A mark that holds.
     *
     * @param from the object it was read from, the first that had it
     * @param points on the grid; of a hazard or nerve the corners of its outline
     * @param name as a person called it
     * @param kind of a hazard
     */
    public record Placed(
            MarkMeaning meaning, FrameKey frame, List<PointPx> points, String name, Hazard.Kind kind, String from) {
        public Placed {
            points = List.copyOf(points);
        }
    }

    /**
     * A mark that no rule knows, or whose form cannot mean what its rule says.
     *
     * @param why in words
     */
    public record Unmatched(String object, String at, Form form, List<String> labels, String why) {
        public Unmatched {
            labels = List.copyOf(labels);
        }
    }

    /**
     * A question to a person.
     *
     * @param meaning of the marks concerned, where known
     */
    public record Question(String object, String at, Optional<MarkMeaning> meaning, String text) {}

    /** An object of which nothing was taken, and why. */
    public record RefusedObject(String object, String at, String why, String remedy) {}

    /** Something noticed. */
    public record Remark(String object, String at, String text) {}
}
