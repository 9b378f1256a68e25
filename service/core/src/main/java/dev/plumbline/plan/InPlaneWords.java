// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Quantities;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.SpeedOfSound;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.apache.commons.math3.RealFieldElement;

/** An in-plane plan in words, rounded, from the probe's edge, with where and when the needle should first appear. */
final class InPlaneWords<T extends RealFieldElement<T>> {
    private static final String FLAT_SKIN =
            "The skin beyond the probe is taken as flat: on a round limb the real skin lies lower, aim flatter.";
    private static final double NOTHING_MM = 0.5;

    private final InPlaneScene<T> scene;
    private final Quantities<PlanQuantity, T> plan;

    InPlaneWords(InPlaneScene<T> scene, Quantities<PlanQuantity, T> plan) {
        this.scene = scene;
        this.plan = plan;
    }

    static String withoutSkin() {
        return "Mark the skin under the probe: without it no depth and no angle can be given.";
    }

    /** @param broken limits the path shown breaks */
    String path(List<Limit> broken, List<PlanNote> notes, InPlanePlan.Clearances clearances) {
        StringBuilder text = new StringBuilder();
        if (!broken.isEmpty()) {
            text.append("This path does not fit the limits you set: ")
                    .append(Words.limits(broken))
                    .append(". ");
        }
        nearTarget(text, broken, clearances);
        entry(text);
        firstSight(text);
        needle(text);
        band(text, notes);
        surroundings(text, clearances);
        return text.toString();
    }

    String infeasible(List<Limit> binding, List<WayOut> waysOut, InPlanePlan.Clearances clearances) {
        StringBuilder text = new StringBuilder("No entry fits the limits you set, for what you marked: ");
        text.append(Words.limits(binding)).append(". ");
        nearTarget(text, binding, clearances);
        text.setLength(text.length() - 1);
        if (!waysOut.isEmpty()) {
            text.append(" What would change that:");
            waysOut.forEach(way -> text.append(' ').append(way.text()));
        }
        return text.toString();
    }

    /**
     * A path can keep no more distance than its target has; where that is less than the margin, the extension beyond the
     * target keeps it too on a tangent only (the literal reading of the limit, kept because an overshooting tip goes there).
     */
    private void nearTarget(StringBuilder text, List<Limit> broken, InPlanePlan.Clearances clearances) {
        double overshoot = scene.limits().overshootMm();
        for (Clearance hazard : clearances.hazards()) {
            Limit limit = new Limit(Limit.Kind.HAZARD, Optional.of(hazard.name()));
            if (broken.contains(limit) && hazard.marginLimitedByTarget() && overshoot > 0) {
                text.append("The target lies nearer to ").append(limit.subject());
                text.append(" than the margin you set, so that with ").append(Words.mm(overshoot));
                text.append(
                        " of overshoot only a path along its side fits: move the target, or set the overshoot to 0 if the"
                                + " tip is sure to stop there. ");
            }
        }
    }

    private double value(PlanQuantity quantity) {
        return plan.number(quantity).orElseThrow().getReal();
    }

    private void entry(StringBuilder text) {
        double degrees = Math.toDegrees(value(PlanQuantity.ANGLE_TO_SKIN));
        Optional<T> fromEdge = plan.number(PlanQuantity.ENTRY_FROM_PROBE_EDGE);
        if (fromEdge.isPresent()) {
            double edge = fromEdge.get().getReal();
            text.append("Enter ").append(Words.mm(Math.abs(edge)));
            text.append(edge < 0 ? " inside the probe's edge (" : " beyond the probe's edge (");
            text.append(Words.mm(value(PlanQuantity.ENTRY_DISTANCE))).append(" from its middle)");
        } else if (scene.midpointKnown()) {
            text.append("Enter ").append(Words.mm(value(PlanQuantity.ENTRY_DISTANCE)));
            text.append(" from the probe's middle");
        } else {
            text.append("Enter ").append(Words.mm(value(PlanQuantity.ENTRY_FROM_TARGET_COLUMN)));
            text.append(" along the skin from the point over the target");
        }
        text.append(", about ").append(Words.degrees(degrees));
        text.append(" (").append(Words.slope(degrees)).append(").");
    }

    private void firstSight(StringBuilder text) {
        Optional<T> leadIn = plan.number(PlanQuantity.LEAD_IN);
        Optional<T> depth = plan.number(PlanQuantity.FIRST_SEEN_DEPTH);
        if (leadIn.isEmpty()) {
            text.append(
                    " Where it should appear is not known: that needs the probe's kind, its footprint and its midpoint"
                            + " on the frame.");
        } else if (depth.isEmpty()) {
            text.append(" No part of this path comes under the face: the beam will not show it.");
        } else if (leadIn.get().getReal() < NOTHING_MM) {
            text.append(" It should show from the skin on; if it does not, stop and find it.");
        } else {
            String inside = Words.mm(leadIn.get().getReal());
            text.append(" It should appear ").append(Words.mm(depth.get().getReal()));
            text.append(" deep once ").append(inside).append(" are in; if ").append(inside);
            text.append(" are in and nothing shows, stop and find it.");
        }
    }

    private void needle(StringBuilder text) {
        text.append(' ').append(Words.mm(value(PlanQuantity.PATH))).append(" of needle to the target: ");
        OptionalDouble length = scene.input().needle().lengthMm();
        if (length.isEmpty()) {
            text.append("with ").append(Words.mm(scene.limits().reserveMm()));
            text.append(" in reserve a needle of at least ");
            text.append(Math.round(Math.ceil(value(PlanQuantity.SHORTEST_NEEDLE))))
                    .append(" mm.");
            return;
        }
        double left = value(PlanQuantity.NEEDLE_LEFT);
        text.append(Words.article(length.getAsDouble())).append(' ').append(Words.mm(length.getAsDouble()));
        text.append(left < 0 ? " needle is too short by " : " needle leaves ").append(Words.mm(Math.abs(left)));
        text.append(left < 0 ? "." : " outside.");
    }

    private void band(StringBuilder text, List<PlanNote> notes) {
        if (notes.contains(PlanNote.SHALLOWER_THAN_BAND)) {
            text.append(" Shallower than the band: seen better, longer way through tissue.");
        }
        if (notes.contains(PlanNote.STEEPER_THAN_BAND)) {
            plan.number(PlanQuantity.HEEL_IN)
                    .ifPresentOrElse(
                            heel -> text.append(" Steeper than the band: heel in about ")
                                    .append(Math.round(Math.toDegrees(heel.getReal())))
                                    .append("\u00b0, then mark again."),
                            () -> text.append(" Steeper than the band by more than heel-in makes up for."));
        }
    }

    private void surroundings(StringBuilder text, InPlanePlan.Clearances clearances) {
        if (scene.skinFlat()) {
            text.append(' ').append(FLAT_SKIN);
        }
        OptionalDouble speed = scene.input().probe().speedOfSoundMPerS();
        if (speed.isPresent()) {
            text.append(' ').append(SpeedOfSound.words(speed.getAsDouble()));
        }
        clearances.hazards().forEach(hazard -> nearest(text, "Hazard", hazard, ", the overshoot counted in"));
        clearances.nerves().forEach(nerve -> nearest(text, "Nerve", nerve, ""));
        if (!scene.obstacles().ignored().isEmpty()) {
            text.append(" Above the skin and so ignored: ")
                    .append(scene.obstacles().ignored().stream()
                            .map(name -> "\"" + name + "\"")
                            .collect(Collectors.joining(", ")))
                    .append('.');
        }
        text.append(
                scene.input().marks().hazards().isEmpty()
                        ? " Hazards were not marked: nothing was checked."
                        : " Hazards were checked only inside this frame.");
    }

    private static void nearest(StringBuilder text, String what, Clearance clearance, String counted) {
        if (clearance.path() instanceof Reading.Seen distance) {
            text.append(' ').append(what).append(" \"").append(clearance.name()).append('"');
            if (distance.value() < -NOTHING_MM) {
                text.append(": crossed").append(counted).append('.');
            } else {
                text.append(": ")
                        .append(Words.mm(Math.max(0, distance.value())))
                        .append(" at the nearest");
                text.append(counted).append('.');
            }
        }
    }
}
