// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;

/**
 * Unique identifiers as a pure function of the case, its revision and the part, so that the same record composed twice
 * has the same identifiers.
 *
 * <p>{@code 2.25.} and the decimal value of a version-8 UUID whose 122 free bits are SHA-256 over the UTF-8 text. Source:
 * DICOM PS3.5 B.2 (UUID derived UIDs); RFC 9562, 5.8 (UUID version 8).
 */
public final class Uids {
    private static final String UUID_ROOT = "2.25.";
    private static final int UUID_BYTES = 16;

    private Uids() {}

    /** Of an instance: {@code sr}, {@code pr/1}, {@code sc/1}, {@code ko}, {@code pdf}. */
    public static String instance(String caseId, int revision, String part) {
        return of(caseId + "|" + revision + "|" + part);
    }

    /** Of the series that holds one kind of object of a case. */
    public static String series(String caseId, String kind) {
        return of(caseId + "|series|" + kind);
    }

    /** Of a tracked measurement; stable over amendments. Name: {@code plan}, an observation's id, {@code hazard/NAME}. */
    public static String tracking(String caseId, String name) {
        return of(caseId + "|track|" + name);
    }

    private static String of(String text) {
        byte[] uuid = Arrays.copyOf(sha256(text), UUID_BYTES);
        uuid[6] = (byte) ((uuid[6] & 0x0f) | 0x80); // version 8
        uuid[8] = (byte) ((uuid[8] & 0x3f) | 0x80); // variant 10
        return UUID_ROOT + new BigInteger(1, uuid);
    }

    private static byte[] sha256(String text) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256.", e);
        }
    }
}
