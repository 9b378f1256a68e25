// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.Amendment;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Withdrawal.Ground;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;

/** What is sent to sign, amend or withdraw a record. */
public final class LifeJson {
    private static final String SIGNATURE = "signature";
    private static final String CASE = "case";

    private LifeJson() {}

    /**
     * A request to sign.
     *
     * @param document the draft's with the signature; the signature's time is now where none was sent
     * @param timed a time was sent
     */
    public record Signing(CaseDocument document, boolean timed) {}

    /** A request to amend. */
    public record Amending(String reason, CaseDocument document) {}

    /** A request to withdraw. */
    public record Withdrawing(Ground ground, String text, String by, Optional<OffsetDateTime> time) {}

    /**
     * Reads {@code {"signature": ...}}.
     *
     * @param draft canonical JSON of what is to be signed
     */
    public static Signing signing(JsonNode body, String draft, OffsetDateTime now) {
        Fields fields = new Fields(body, "", List.of(SIGNATURE));
        JsonNode sent = fields.value(SIGNATURE)
                .orElseThrow(() -> fields.missing(SIGNATURE, "who signs: at least the name, as in the case document"));
        if (!(sent instanceof ObjectNode signature)) {
            throw Fields.refusal("/signature", "a JSON object");
        }
        boolean timed = signature.hasNonNull("time");
        ObjectNode whole = (ObjectNode) StrictJson.read(draft.getBytes(StandardCharsets.UTF_8));
        ObjectNode complete = signature.deepCopy();
        if (!timed) {
            complete.put("time", DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(now));
        }
        whole.set(SIGNATURE, complete);
        return new Signing(CaseJson.read(whole, Door.HTTP), timed);
    }

    /**
     * Reads {@code {"reason": ..., "case": ...}}: the whole case as it should have been, signed.
     *
     * @param caseId of the record; the case may leave it out
     */
    public static Amending amending(JsonNode body, String caseId) {
        Fields fields = new Fields(body, "", List.of("reason", CASE));
        String reason = fields.needText("reason", Wording.REMARK);
        if (reason.contains(Amendment.CHANGED)) {
            throw Fields.refusal("/reason", "a reason without \"" + Amendment.CHANGED + "\"");
        }
        JsonNode sent = fields.value(CASE)
                .orElseThrow(() -> fields.missing(CASE, "the whole case document as it should have been"));
        return new Amending(reason, inCase(() -> amended(sent, caseId)));
    }

    private static CaseDocument amended(JsonNode sent, String caseId) {
        CaseDocument document = CaseJson.read(sent, Door.HTTP);
        if (document.caseId().filter(id -> !id.equals(caseId)).isPresent()) {
            throw new Refusal(new Problem.InvalidValue(
                    "/caseId",
                    "This is another case than that of the record.",
                    "Give the caseId of the record, or leave it out."));
        }
        if (document.signature().isEmpty()) {
            throw new Refusal(new Problem.MissingField(
                    "/signature", "An amendment is signed: give at least name and time of who amends."));
        }
        return document.withCaseId(caseId);
    }

    /** Reads {@code {"reason": ..., "text": ..., "by": ..., "time": ...}}. */
    public static Withdrawing withdrawing(JsonNode body) {
        Fields fields = new Fields(body, "", List.of("reason", "text", "by", "time"));
        return new Withdrawing(
                fields.needWord("reason", List.of(Ground.values()), Ground::word),
                fields.needText("text", Wording.REMARK),
                fields.needText("by", Wording.NAME),
                fields.has("time") ? Optional.of(fields.needTime("time")) : Optional.empty());
    }

    /** What the work refuses of a case, said at its place in the request. */
    public static <T> T inCase(java.util.function.Supplier<T> work) {
        try {
            return work.get();
        } catch (Refusal refusal) {
            throw new Refusal(refusal.problem().under("/" + CASE));
        }
    }
}
