// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import dev.plumbline.archive.Dispatch.Answer;
import dev.plumbline.dimse.Status;
import java.io.InputStream;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Optional;

/**
 * What a STOW-RS service answered about one object. Source: DICOM PS3.18, 10.5.3 and annex I; failure and warning reasons
 * PS3.3, C.12.1.1.
 */
final class StowAnswer {
    private static final JsonMapper JSON = new JsonMapper();
    private static final int OK = 200;
    private static final int ACCEPTED = 202;
    private static final int CONFLICT = 409;
    private static final int LONGEST_WORDS = 300;

    private static final String FAILED_SOP_SEQUENCE = "00081198";
    private static final String REFERENCED_SOP_SEQUENCE = "00081199";
    private static final String REFERENCED_SOP_INSTANCE_UID = "00081155";
    private static final String WARNING_REASON = "00081196";
    private static final String FAILURE_REASON = "00081197";

    private final String sopInstanceUid;
    private final HttpResponse<InputStream> answer;
    private final String body;

    StowAnswer(String sopInstanceUid, HttpResponse<InputStream> answer, byte[] body) {
        this.sopInstanceUid = sopInstanceUid;
        this.answer = answer;
        this.body = new String(body, StandardCharsets.UTF_8);
    }

    int status() {
        return answer.statusCode();
    }

    /**
     * What it says of the object, or where it says nothing of it, what its status means.
     *
     * @param now when it came
     */
    Outcome outcome(Instant now) {
        boolean perObject = status() == OK || status() == ACCEPTED || status() == CONFLICT;
        Optional<JsonNode> failed = perObject ? item(FAILED_SOP_SEQUENCE) : Optional.empty();
        if (failed.isPresent()) {
            return reasoned(number(failed.get(), FAILURE_REASON).orElse(Status.PROCESSING_FAILURE.code()));
        }
        Optional<JsonNode> taken = perObject ? item(REFERENCED_SOP_SEQUENCE) : Optional.empty();
        Optional<Integer> warning = taken.flatMap(item -> number(item, WARNING_REASON));
        if (warning.isPresent()) {
            Status status = Status.of(warning.get());
            return status.kind() == Status.Kind.WARNING
                    ? reasoned(warning.get())
                    : Outcome.of(Verdict.SENT_ALTERED, code(warning.get()), "stored, with a warning");
        }
        Verdict verdict = taken.isPresent() ? Verdict.SENT : Verdicts.ofHttp(status());
        return new Outcome(
                verdict, new Answer(Integer.toString(status()), words(verdict)), RetryAfter.of(answer.headers(), now));
    }

    private Outcome reasoned(int reason) {
        return Outcome.of(
                Verdicts.of(Status.of(reason)), code(reason), Status.of(reason).words());
    }

    private String code(int reason) {
        return status() + "/" + String.format("%04X", reason);
    }

    /** The archive's own words where it refuses, made harmless: they go to terminals and pages. */
    private String words(Verdict verdict) {
        if (verdict == Verdict.SENT) {
            return "stored";
        }
        String type = answer.headers().firstValue("Content-Type").orElse("");
        boolean text = type.contains("json") || type.startsWith("text/plain");
        String said = text ? body.replaceAll("\\s+", " ") : "";
        String cut = said.substring(0, Math.min(said.length(), LONGEST_WORDS));
        return cut.isBlank() ? "HTTP status " + status() : cut;
    }

    private Optional<JsonNode> item(String sequence) {
        for (JsonNode item : root().path(sequence).path("Value")) {
            if (value(item, REFERENCED_SOP_INSTANCE_UID).asText().equals(sopInstanceUid)) {
                return Optional.of(item);
            }
        }
        return Optional.empty();
    }

    private static Optional<Integer> number(JsonNode item, String attribute) {
        return Optional.of(value(item, attribute)).filter(JsonNode::isInt).map(JsonNode::intValue);
    }

    private static JsonNode value(JsonNode item, String attribute) {
        return item.path(attribute).path("Value").path(0);
    }

    private JsonNode root() {
        try {
            JsonNode root = JSON.readTree(body);
            return root.isArray() ? root.path(0) : root;
        } catch (JsonProcessingException e) {
            return JSON.createObjectNode(); // an answer in another form has nothing to say about single objects
        }
    }
}
