// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.intake;

import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.intake.Gathered.FrameKey;
import dev.plumbline.problem.Refusal;
import java.util.List;

/**
 * Whether the marks of an object can be where it says they are. An object with one mark that cannot is refused whole, so
 * that nothing is half attached.
 */
final class Admission {
    /** Rounding of other software; what lies farther outside is refused. */
    private static final double OUTSIDE_PX = 1;

    private final MarkFrames frames;

    Admission(MarkFrames frames) {
        this.frames = frames;
    }

    /** What is to be done with a mark. */
    sealed interface Verdict {}

    /**
     * Taken.
     *
     * @param moved a point lay outside the image by less than a pixel and was brought in
     */
    record Taken(FrameKey frame, ForeignMark mark, boolean moved) implements Verdict {}

    /** Only a person can say. */
    record Asked(String text) implements Verdict {}

    /** Impossible. */
    record Impossible(String why, String remedy) implements Verdict {}

    Verdict of(ForeignMark mark) {
        int count = frames.count(mark.image()).orElse(0);
        if (count == 0) {
            return new Impossible(
                    "A mark lies on an image that this study does not hold here.",
                    "Send the image first; the marks are then read again.");
        }
        if (mark.frames().size() > 1) {
            return new Asked("Which frame? The mark names " + mark.frames().size() + " frames of the image.");
        }
        if (mark.frames().isEmpty() && count > 1) {
            return new Asked("Which frame? The image has " + count + " frames and the mark names none.");
        }
        int number = mark.frames().isEmpty() ? 1 : mark.frames().get(0);
        if (number < 1 || number > count) {
            return new Impossible(
                    "A mark names frame " + number + " of an image that has " + count + ".",
                    "Draw it on a frame that is there.");
        }
        return placed(mark, new FrameKey(mark.image(), number));
    }

    private Verdict placed(ForeignMark mark, FrameKey key) {
        FrameGeometry frame;
        try {
            frame = frames.geometry(key.image(), key.number());
        } catch (Refusal refusal) { // the image is held but says of itself what cannot be
            return new Impossible(refusal.problem().detail(), refusal.problem().remedy());
        }
        for (PointPx point : mark.points()) {
            if (point.column() < -OUTSIDE_PX
                    || point.row() < -OUTSIDE_PX
                    || point.column() > frame.columns() + OUTSIDE_PX
                    || point.row() > frame.rows() + OUTSIDE_PX) {
                return new Impossible(
                        "A mark lies outside its image of " + frame.columns() + " x " + frame.rows() + " pixels.",
                        "Draw it on the image.");
            }
        }
        List<PointPx> within = mark.points().stream()
                .map(point -> new PointPx(
                                Math.max(0, Math.min(frame.columns(), point.column())),
                                Math.max(0, Math.min(frame.rows(), point.row())))
                        .onGrid())
                .toList();
        boolean moved = mark.points().stream().anyMatch(point -> !frame.holds(point));
        return new Taken(key, mark.with(within), moved);
    }
}
