// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.SkinCourse;
import dev.plumbline.geometry.Spot;

/** Whether a structure lies wholly outside the patient. */
final class Above {
    private Above() {}

    static boolean skin(Obstacle obstacle, SkinCourse skin) {
        if (obstacle.corners().stream().anyMatch(corner -> inTissue(corner, skin))) {
            return false;
        }
        if (obstacle.disc()) {
            return skin.crossings(obstacle.corner(0), obstacle.radiusMm() - Intervals.TOLERANCE_MM)
                    .isEmpty();
        }
        for (int i = 0; i < obstacle.corners().size(); i++) {
            if (skin.crossings(obstacle.corner(i), obstacle.corner(i + 1)).size() > 1) {
                return false;
            }
        }
        return true;
    }

    private static boolean inTissue(Spot spot, SkinCourse skin) {
        return skin.reachesTo(spot.u())
                && spot.w() > skin.depthAt(Gradient.constant(spot.u())).getReal() + Intervals.TOLERANCE_MM;
    }
}
