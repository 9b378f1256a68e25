// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import java.util.Optional;

/**
 * One picture of tissue on the screen.
 *
 * @param flow colour Doppler over part of it
 * @param needle none where the needle is not in the body yet
 */
record SamplePane(
        ImageArea area, Machine machine, Anatomy anatomy, Optional<NeedlePose> needle, Optional<ColourFlow> flow) {
    /** A probe and how its echoes are received. */
    record Machine(Transducer transducer, Scanner scanner, String name) {}

    SamplePane with(NeedlePose pose) {
        return new SamplePane(area, machine, anatomy, Optional.of(pose), flow);
    }

    SamplePane with(ColourFlow colours) {
        return new SamplePane(area, machine, anatomy, needle, Optional.of(colours));
    }

    SamplePane with(Anatomy other) {
        return new SamplePane(area, machine, other, needle, flow);
    }

    /** Depth that the area shows below the face's middle. */
    double depthMm() {
        return area.corner().depthMm() + area.rows() * area.pixel().mmPerRow();
    }
}
