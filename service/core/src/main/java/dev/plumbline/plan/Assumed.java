// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.SkinCourse;
import java.util.List;

/** What a path is taken to do because one image cannot show it. */
public final class Assumed {
    private static final List<Assumption> FLAT =
            List.of(Assumption.NEEDLE_IN_IMAGE_PLANE, Assumption.NEEDLE_STRAIGHT, Assumption.SKIN_FLAT_BEYOND_PROBE);
    private static final List<Assumption> SHAPED =
            List.of(Assumption.NEEDLE_IN_IMAGE_PLANE, Assumption.NEEDLE_STRAIGHT);

    private Assumed() {}

    /** In the image plane; the skin is only assumed flat where nobody stated its shape. */
    public static List<Assumption> inPlane(Probe probe) {
        return SkinCourse.isFlat(probe) ? FLAT : SHAPED;
    }

    /** Across the image plane. */
    public static List<Assumption> outOfPlane() {
        return List.of(Assumption.NEEDLE_STRAIGHT, Assumption.BEAM_PERPENDICULAR_TO_SKIN);
    }
}
