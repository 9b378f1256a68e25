// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import java.util.Optional;

/**
 * One picture of tissue on the screen.
 *
 * @param needle none where the needle is not in the body yet
 */
record SamplePane(ImageArea area, Machine machine, Anatomy anatomy, Optional<NeedlePose> needle) {
    /** A probe and how its echoes are received. */
    record Machine(Transducer transducer, Scanner scanner, String name) {}

    SamplePane with(NeedlePose pose) {
        return new SamplePane(area, machine, anatomy, Optional.of(pose));
    }

    /** Depth that the area shows below the face's middle. */
    double depthMm() {
        return area.corner().depthMm() + area.rows() * area.pixel().mmPerRow();
    }
}
