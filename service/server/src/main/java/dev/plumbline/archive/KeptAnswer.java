// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.time.Duration;
import java.time.Instant;

/**
 * What was answered to a request with an Idempotency-Key, so that the same request gets the same answer again.
 *
 * @param requestDigest SHA-256 of the request's body, hexadecimal
 * @param status of HTTP
 */
public record KeptAnswer(String key, String requestDigest, int status, String body, Instant created) {
    /** How long answers are kept. Source: design choice. */
    public static final Duration KEPT_FOR = Duration.ofDays(30);
}
