// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.HeldObject;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/**
 * The text between the parts of an answer: a digest over the digests of what is sent, so that no object can contain it
 * on purpose, and no randomness is needed.
 */
final class Boundary {
    private static final int DIGITS = 48;

    private Boundary() {}

    static String of(List<HeldObject> objects) {
        try {
            MessageDigest sha256 = MessageDigest.getInstance("SHA-256");
            objects.forEach(object -> sha256.update(object.digest().getBytes(StandardCharsets.US_ASCII)));
            return "part-" + HexFormat.of().formatHex(sha256.digest()).substring(0, DIGITS);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256.", e);
        }
    }
}
