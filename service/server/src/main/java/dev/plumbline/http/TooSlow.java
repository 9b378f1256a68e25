// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import java.io.IOException;

/** A request's body comes too slowly to wait for it. */
final class TooSlow extends IOException {
    private static final long serialVersionUID = 1L;

    TooSlow() {
        super("The body comes too slowly.");
    }
}
