// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.TargetKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What lies under the probe.
 *
 * @param structures painted in this order
 * @param block code word of the block this could be
 * @param target where a tip would be meant to stop
 * @param outlines of what a person would mark
 */
record Anatomy(
        List<Structure> structures, String block, ScanPoint target, TargetKind targetKind, List<Outlined> outlines) {
    private static final int CORNERS = 32;

    /** The same with fluid injected. */
    Anatomy with(Fluid fluid) {
        List<Structure> wet = new ArrayList<>(structures);
        wet.add(fluid);
        return new Anatomy(wet, block, target, targetKind, outlines);
    }

    /** Outline of a structure by name. */
    Outlined named(String name) {
        return outlines.stream()
                .filter(outlined -> outlined.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** A structure a person would mark: a nerve, or with a kind a hazard. */
    record Outlined(String name, Optional<Hazard.Kind> hazard, List<ScanPoint> outline) {}

    static Outlined nerve(String name, NerveBundle.Oval oval) {
        List<ScanPoint> outline = new ArrayList<>();
        for (int i = 0; i < CORNERS; i++) {
            double turn = 2 * Math.PI * i / CORNERS;
            outline.add(oval.at(oval.longMm() * StrictMath.cos(turn), oval.shortMm() * StrictMath.sin(turn)));
        }
        return new Outlined(name, Optional.empty(), outline);
    }

    static Outlined vessel(String name, Hazard.Kind kind, Vessel vessel) {
        NerveBundle.Oval oval = new NerveBundle.Oval(vessel.center(), vessel.acrossMm(), vessel.downMm(), 0);
        return new Outlined(name, Optional.of(kind), nerve(name, oval).outline());
    }

    /** From a surface down to a depth, between two sides. */
    static Outlined below(String name, Hazard.Kind kind, Surface surface) {
        List<ScanPoint> outline = new ArrayList<>();
        int steps = 12;
        for (int i = 0; i <= steps; i++) {
            double across = surface.from + (surface.to - surface.from) * i / steps;
            outline.add(new ScanPoint(across, surface.border.at(across)));
        }
        outline.add(new ScanPoint(surface.to, surface.bottomMm));
        outline.add(new ScanPoint(surface.from, surface.bottomMm));
        return new Outlined(name, Optional.of(kind), outline);
    }

    /** The part of a border between two sides, and how far down counts as behind it. */
    record Surface(Border border, double from, double to, double bottomMm) {}
}
