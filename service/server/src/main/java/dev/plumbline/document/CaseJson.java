// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.UUID;

/**
 * The case document as JSON: strict when reading, and {@code read(write(document))} is the document again.
 *
 * <p>Format: {@code docs/case.schema.json}. A field that is null counts as not said; a name the schema does not know is
 * refused with the nearest one it does.
 */
public final class CaseJson {
    private CaseJson() {}

    /**
     * Reads a case document.
     *
     * @throws Refusal that names the field and the remedy, when it is no case document of this version
     */
    public static CaseDocument read(byte[] json, Door door) {
        return read(StrictJson.read(json), door);
    }

    /** Reads a case document from a stream of at most {@link StrictJson#LIMIT_BYTES}. */
    public static CaseDocument read(InputStream json, Door door) {
        return read(StrictJson.read(json), door);
    }

    /** Reads a case document that stands inside another JSON document; pointers start at the case. */
    public static CaseDocument read(JsonNode json, Door door) {
        return new CaseReader(door).read(json);
    }

    /** The document as JSON with every stated field and nothing else. */
    public static ObjectNode write(CaseDocument document) {
        return new CaseWriter().write(document);
    }

    /** The one text of a document: two documents are equal exactly when their canonical texts are. */
    public static String canonical(CaseDocument document) {
        return Canonical.text(write(document));
    }

    /**
     * The document with an identifier: its own, or one derived from what it says, so that the same document always gets
     * the same one.
     *
     * <p>Source: RFC 9562, 5.8 (UUID version 8), over the first 128 bits of the SHA-256 of the canonical text.
     */
    public static CaseDocument identified(CaseDocument document) {
        return document.caseId().isPresent() ? document : document.withCaseId(derivedId(canonical(document)));
    }

    private static String derivedId(String canonical) {
        ByteBuffer digest = ByteBuffer.wrap(sha256(canonical));
        long high = (digest.getLong() & ~0xF000L) | 0x8000L; // version 8
        long low = (digest.getLong() & 0x3FFF_FFFF_FFFF_FFFFL) | 0x8000_0000_0000_0000L; // variant 10
        return new UUID(high, low).toString();
    }

    private static byte[] sha256(String text) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256.", e);
        }
    }
}
