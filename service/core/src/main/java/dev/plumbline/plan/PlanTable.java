// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.Inputs;
import java.util.ArrayList;
import java.util.List;

/** Other paths beside the plan's, each with the limits it breaks. */
final class PlanTable {
    private static final int FROM_DEG = 20;
    private static final int TO_DEG = 60;
    private static final int STEP_DEG = 5;

    private final InPlaneScene<Gradient> scene;
    private final EntryLimits limits;
    private final Inputs<Gradient> inputs;

    PlanTable(InPlaneScene<Gradient> scene, EntryLimits limits, Inputs<Gradient> inputs) {
        this.scene = scene;
        this.limits = limits;
        this.inputs = inputs;
    }

    PlanRow row(Decision decision) {
        return InPlanePath.find(scene, decision).map(this::row).orElseGet(() -> withoutSkinAt(decision));
    }

    private PlanRow row(InPlanePath<Gradient> path) {
        List<Limit> broken = limits.brokenBy(path);
        return new PlanRow(InPlaneQuantities.row(path).readings(inputs), broken.isEmpty(), broken);
    }

    private PlanRow withoutSkinAt(Decision decision) {
        double radians = ((Decision.Angle) decision).radians();
        return new PlanRow(
                InPlaneQuantities.pathlessRow(Gradient.constant(radians)).readings(inputs), false, List.of());
    }

    /** 20 to 60 degrees in steps of 5, the angle exact. */
    List<PlanRow> alternatives() {
        List<PlanRow> rows = new ArrayList<>();
        for (int degrees = FROM_DEG; degrees <= TO_DEG; degrees += STEP_DEG) {
            rows.add(row(new Decision.Angle(Math.toRadians(degrees))));
        }
        return rows;
    }
}
