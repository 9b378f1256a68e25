// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

/** What lies in the data folder cannot be trusted; the message names the file and what a person can do. */
public final class StoreDamaged extends RuntimeException {
    private static final long serialVersionUID = 1L;

    StoreDamaged(String message) {
        super(message);
    }

    StoreDamaged(String message, Throwable cause) {
        super(message, cause);
    }
}
