// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.Quantities;
import dev.plumbline.geometry.SpeedOfSound;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** An out-of-plane plan in rounded words. */
final class OutOfPlaneWords {
    private static final double IN_THE_MIDDLE_MM = 0.5;

    private OutOfPlaneWords() {}

    static String text(
            PlanInput input, Quantities<PlanQuantity, Gradient> plan, List<Limit> broken, List<WayOut> waysOut) {
        StringBuilder text = new StringBuilder();
        Optional<Gradient> distance = plan.number(PlanQuantity.PUNCTURE_DISTANCE);
        if (!broken.isEmpty()) {
            text.append(distance.isPresent() ? "This path does not fit" : "No puncture fits");
            text.append(" the limits you set, for what you marked: ")
                    .append(Words.limits(broken))
                    .append(". ");
        }
        if (distance.isEmpty()) {
            waysOut.forEach(way -> text.append(way.text()).append(' '));
            return text.toString().strip();
        }
        puncture(text, plan);
        needle(text, input, plan);
        OptionalDouble speed = input.probe().speedOfSoundMPerS();
        if (speed.isPresent()) {
            text.append(' ').append(SpeedOfSound.words(speed.getAsDouble()));
        }
        text.append(" What lies between puncture and beam was not seen.");
        return text.toString();
    }

    static String place(OutOfPlanePath<Gradient> path) {
        return "puncture " + Words.mm(path.distance().getReal()) + " from the beam, about "
                + Words.degrees(Math.toDegrees(path.angle().getReal()));
    }

    private static double value(Quantities<PlanQuantity, Gradient> plan, PlanQuantity quantity) {
        return plan.number(quantity).orElseThrow().getReal();
    }

    private static void puncture(StringBuilder text, Quantities<PlanQuantity, Gradient> plan) {
        double degrees = Math.toDegrees(value(plan, PlanQuantity.ANGLE_TO_SKIN));
        text.append("Puncture ").append(Words.mm(value(plan, PlanQuantity.PUNCTURE_DISTANCE)));
        text.append(" from the beam");
        plan.number(PlanQuantity.PUNCTURE_FROM_PROBE_EDGE)
                .ifPresent(edge -> text.append(" (")
                        .append(Words.mm(Math.abs(edge.getReal())))
                        .append(edge.getReal() < 0 ? " inside the housing's edge)" : " from the housing's edge)"));
        plan.number(PlanQuantity.ALONG_PROBE).ifPresent(along -> {
            double off = Math.abs(along.getReal());
            text.append(off < IN_THE_MIDDLE_MM ? ", level with the probe's middle" : ", ");
            text.append(off < IN_THE_MIDDLE_MM ? "" : Words.mm(off) + " along the probe from its middle");
        });
        text.append(", about ").append(Words.degrees(degrees));
        text.append(" (").append(Words.slope(degrees)).append("): the needle crosses the beam ");
        text.append(Words.mm(value(plan, PlanQuantity.TARGET_DEPTH))).append(" deep, at the target.");
    }

    private static void needle(StringBuilder text, PlanInput input, Quantities<PlanQuantity, Gradient> plan) {
        double path = value(plan, PlanQuantity.PATH);
        text.append(' ').append(Words.mm(path)).append(" of needle to the target");
        OptionalDouble length = input.needle().lengthMm();
        if (length.isEmpty()) {
            long shortest = (long) Math.ceil(value(plan, PlanQuantity.SHORTEST_NEEDLE));
            text.append("; with reserve a needle of at least ").append(shortest).append(" mm.");
            return;
        }
        double left = length.getAsDouble() - path;
        text.append(": ").append(Words.article(length.getAsDouble())).append(' ');
        text.append(Words.mm(length.getAsDouble()));
        text.append(left < 0 ? " needle is too short by " : " needle leaves ").append(Words.mm(Math.abs(left)));
        text.append(left < 0 ? "." : " outside.");
    }
}
