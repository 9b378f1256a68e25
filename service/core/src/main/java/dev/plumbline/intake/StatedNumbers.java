// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.intake;

import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.NamedMark;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Numbers of other software, computed again from the points and the frame's own scale. They are compared, never used. */
final class StatedNumbers {
    private static final double DIFFERS = 0.02;
    private static final Map<String, Double> MM_PER_UNIT = Map.of("mm", 1.0, "cm", 10.0, "m", 1000.0, "um", 0.001);

    private StatedNumbers() {}

    /** What a person should know about the number, in words; empty where there is none or it agrees. */
    static Optional<String> remark(ForeignMark mark, FrameGeometry frame) {
        return mark.stated().flatMap(stated -> switch (mark.form()) {
            case LINE, POLYLINE -> length(mark, stated, frame);
            case ANGLE -> angle(mark, stated, frame);
            default -> Optional.empty();
        });
    }

    private static Optional<String> length(ForeignMark mark, ForeignMark.Stated stated, FrameGeometry frame) {
        Optional<Calibration> scale = scale(mark, frame);
        if (scale.isEmpty()) {
            return Optional.of("The length cannot be computed again: nothing tells the scale at this place.");
        }
        double mm = 0;
        for (int i = 1; i < mark.points().size(); i++) {
            mm += distance(mark.points().get(i - 1), mark.points().get(i), scale.get());
        }
        OptionalDouble said = millimetres(stated);
        if (said.isEmpty()) {
            return Optional.of(String.format(
                    Locale.ROOT,
                    "The length is %.2f mm by its points; the report says %s in a unit that is no length, \"%s\".",
                    mm,
                    stated.value(),
                    stated.unit()));
        }
        return differs(said.getAsDouble(), mm)
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "The length is %.2f mm by its points; the report says %.2f mm. The points count.",
                        mm,
                        said.getAsDouble()))
                : Optional.empty();
    }

    private static Optional<String> angle(ForeignMark mark, ForeignMark.Stated stated, FrameGeometry frame) {
        Optional<Calibration> scale = scale(mark, frame);
        if (scale.isEmpty() || !stated.unit().equals("deg")) {
            return Optional.empty();
        }
        List<PointPx> points = mark.points();
        PointPx vertex = points.get(1);
        double first = direction(vertex, points.get(0), scale.get());
        double second = direction(points.get(points.size() - 2), points.get(points.size() - 1), scale.get());
        double turned = Math.abs(Math.IEEEremainder(first - second, 360));
        return differs(stated.value(), turned)
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "The angle is %.1f degrees by its points; the report says %.1f. The points count.",
                        turned,
                        stated.value()))
                : Optional.empty();
    }

    private static boolean differs(double said, double computed) {
        return !(Math.abs(said - computed) <= DIFFERS * Math.abs(computed));
    }

    private static OptionalDouble millimetres(ForeignMark.Stated stated) {
        String unit = stated.unit();
        Double factor = MM_PER_UNIT.get(unit);
        return factor == null ? OptionalDouble.empty() : OptionalDouble.of(factor * stated.value());
    }

    private static Optional<Calibration> scale(ForeignMark mark, FrameGeometry frame) {
        try {
            return Optional.of(frame.calibration(
                    "",
                    mark.points().stream()
                            .map(point -> new NamedMark(mark.at(), point))
                            .toList()));
        } catch (Refusal noScale) {
            return Optional.empty();
        }
    }

    private static double distance(PointPx a, PointPx b, Calibration scale) {
        return Math.hypot(
                (b.column() - a.column()) * scale.pixel().mmPerColumn(),
                (b.row() - a.row()) * scale.pixel().mmPerRow());
    }

    private static double direction(PointPx from, PointPx to, Calibration scale) {
        return Math.toDegrees(Math.atan2(
                (to.row() - from.row()) * scale.pixel().mmPerRow(),
                (to.column() - from.column()) * scale.pixel().mmPerColumn()));
    }
}
