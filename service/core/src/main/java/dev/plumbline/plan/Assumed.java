// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.SkinCourse;
import java.util.ArrayList;
import java.util.List;

/** What a path is taken to do because one image cannot show it. */
public final class Assumed {
    private static final List<Assumption> FLAT =
            List.of(Assumption.NEEDLE_IN_IMAGE_PLANE, Assumption.NEEDLE_STRAIGHT, Assumption.SKIN_FLAT_BEYOND_PROBE);
    private static final List<Assumption> SHAPED =
            List.of(Assumption.NEEDLE_IN_IMAGE_PLANE, Assumption.NEEDLE_STRAIGHT);

    private static final List<Assumption> ACROSS =
            List.of(Assumption.NEEDLE_STRAIGHT, Assumption.BEAM_PERPENDICULAR_TO_SKIN);

    private Assumed() {}

    /** In the image plane; the skin is only assumed flat where nobody stated its shape. */
    public static List<Assumption> inPlane(Probe probe) {
        return withSpeed(SkinCourse.isFlat(probe) ? FLAT : SHAPED, probe);
    }

    /** Across the image plane. */
    public static List<Assumption> outOfPlane(Probe probe) {
        return withSpeed(ACROSS, probe);
    }

    private static List<Assumption> withSpeed(List<Assumption> others, Probe probe) {
        if (probe.speedOfSoundMPerS().isEmpty()) {
            return others;
        }
        List<Assumption> all = new ArrayList<>(others);
        all.add(Assumption.SPEED_OF_SOUND_STATED);
        return all;
    }
}
