// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;

/** Where cases become records and records are found again. */
public interface RecordDesk {
    /**
     * Keeps a case without making a record of it; durable when it returns.
     *
     * @throws Refusal {@link Problem.Conflict} where the case is held with another content
     */
    Answer open(CaseDocument document, Optional<Key> key);

    /**
     * The case document as it is held.
     *
     * @throws Refusal {@link Problem.NotHeld}
     */
    CaseDocument stored(String caseId);

    /**
     * Makes and keeps the record of a case; durable when it returns.
     *
     * @throws Refusal where the case cannot be recorded, or something else is held in its place
     */
    Answer file(CaseDocument document, Optional<Key> key);

    /**
     * The records that are held, newest first.
     *
     * @param limit rows at most
     */
    List<ObjectNode> list(Optional<String> caseId, int limit, int offset);

    /**
     * One record: what it is, and what it says.
     *
     * @throws Refusal {@link Problem.NotHeld}
     */
    ObjectNode record(String recordUid);

    /**
     * The DICOM object of a record.
     *
     * @throws Refusal {@link Problem.NotHeld} where the record is a draft
     */
    InputStream report(String recordUid);

    /** An Idempotency-Key with the digest of the body it came with. */
    record Key(String key, String requestDigest) {}

    /**
     * What is answered, now and each time the same request comes again.
     *
     * @param body with {@code location}, where it can be found
     */
    record Answer(int status, ObjectNode body) {}
}
