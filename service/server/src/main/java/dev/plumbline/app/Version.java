// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import java.util.Optional;

/** The version as the jar states it. */
final class Version {
    private Version() {}

    /** {@code unpacked} where the classes do not come from a jar. */
    static String text() {
        return Optional.ofNullable(Version.class.getPackage().getImplementationVersion())
                .orElse("unpacked");
    }
}
