// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.time.Duration;

/**
 * How long is waited. Design choices of TRUST 2.2 and T7.
 *
 * @param artim for the association request after the connection, and for the connection to end after the association
 *     (PS3.8, 9.1.5)
 * @param idle for the next message of an association that others opened, and for the rest of a PDU that has begun
 * @param connect for a connection to a peer, TLS handshake and association answer each
 * @param response for the answer to a message
 */
public record Timeouts(Duration artim, Duration idle, Duration connect, Duration response) {
    /** What holds where a site says nothing. */
    public static final Timeouts USUAL = new Timeouts(
            Duration.ofSeconds(10), Duration.ofSeconds(30), Duration.ofSeconds(10), Duration.ofSeconds(60));
}
