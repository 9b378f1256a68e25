// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.nio.file.Path;

/** A file in the data folder that is not as it was left, or not there. */
public record Damage(Path file, String what) {
    @Override
    public String toString() {
        return file + ": " + what;
    }
}
