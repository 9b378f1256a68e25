// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import dev.plumbline.archive.Archive;
import dev.plumbline.archive.Dispatch.Answer;
import dev.plumbline.archive.HeldObject;
import dev.plumbline.dimse.Status;
import dev.plumbline.dispatch.Proof.Finding;
import dev.plumbline.multipart.MultipartReader;
import dev.plumbline.multipart.MultipartWriter;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpTimeoutException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** By STOW-RS, proved by WADO-RS. Source: DICOM PS3.18, 10.4, 10.5 and annex I. */
final class WebCarrier implements Carrier {
    private static final JsonMapper JSON = new JsonMapper();
    private static final int OK = 200;
    private static final int ACCEPTED = 202;
    private static final int NOT_FOUND = 404;
    private static final int GONE = 410;
    private static final int CONFLICT = 409;
    private static final int NOT_ACCEPTABLE = 406;
    private static final int LONGEST_ANSWER = 1 << 20;
    private static final int LONGEST_WORDS = 300;
    private static final String DICOM = "application/dicom";
    private static final Pattern BOUNDARY = Pattern.compile("boundary=(?:\"([^\"]+)\"|([^;\\s]+))");
    private static final Pattern SECONDS = Pattern.compile("\\d{1,6}");

    private final Archive archive;
    private final WebPeer peer;

    WebCarrier(Archive archive, WebPeer peer) {
        this.archive = archive;
        this.peer = peer;
    }

    @Override
    public Outcome send(HeldObject object) {
        try {
            HttpResponse<InputStream> answer = peer.send(peer.request("/studies")
                    .header("Accept", "application/dicom+json")
                    .header("Content-Type", MultipartWriter.contentType(DICOM, boundary(object)))
                    .POST(body(object)));
            try (InputStream in = answer.body()) {
                return judged(object, answer, in.readNBytes(LONGEST_ANSWER));
            }
        } catch (WebPeer.Unanswered e) {
            return Outcome.of(Verdict.DESTINATION_LATER, "", String.valueOf(e.getMessage()));
        } catch (HttpTimeoutException e) {
            return Outcome.of(Verdict.DESTINATION_LATER, "", "The archive stopped in the middle of its answer.");
        } catch (IOException e) {
            return Outcome.of(Verdict.DESTINATION_LATER, "", "The connection broke before the answer was read.");
        }
    }

    private static String boundary(HeldObject object) {
        return "plumbline-" + object.digest().substring(0, 32);
    }

    private BodyPublisher body(HeldObject object) throws IOException {
        String start = "--" + boundary(object) + "\r\nContent-Type: " + DICOM + "\r\n\r\n";
        String end = "\r\n--" + boundary(object) + "--\r\n";
        return BodyPublishers.concat(
                BodyPublishers.ofString(start, StandardCharsets.US_ASCII),
                BodyPublishers.ofFile(archive.file(object)),
                BodyPublishers.ofString(end, StandardCharsets.US_ASCII));
    }

    private static Outcome judged(HeldObject object, HttpResponse<InputStream> answer, byte[] body) {
        int status = answer.statusCode();
        Optional<Integer> reason = failureReason(object, body);
        boolean perObject = status == OK || status == ACCEPTED || status == CONFLICT;
        if (perObject && reason.isPresent()) {
            Status failure = Status.of(reason.get());
            String code = status + "/" + String.format("%04X", reason.get());
            return Outcome.of(Verdicts.of(failure), code, failure.words());
        }
        Verdict verdict = perObject && names(object, body, "00081199") ? Verdict.SENT : Verdicts.ofHttp(status);
        return new Outcome(
                verdict, new Answer(Integer.toString(status), words(verdict, answer, body)), retryAfter(answer));
    }

    /** The archive's own words where it refuses, made harmless: they go to terminals and pages. */
    private static String words(Verdict verdict, HttpResponse<InputStream> answer, byte[] body) {
        if (verdict == Verdict.SENT) {
            return "stored";
        }
        String type = answer.headers().firstValue("Content-Type").orElse("");
        boolean text = type.contains("json") || type.startsWith("text/plain");
        String said = text ? new String(body, StandardCharsets.UTF_8).replaceAll("\\s+", " ") : "";
        String cut = said.substring(0, Math.min(said.length(), LONGEST_WORDS));
        return cut.isBlank() ? "HTTP status " + answer.statusCode() : cut;
    }

    private static Optional<Duration> retryAfter(HttpResponse<InputStream> answer) {
        return answer.headers()
                .firstValue("Retry-After")
                .filter(text -> SECONDS.matcher(text).matches())
                .map(text -> Duration.ofSeconds(Long.parseLong(text)));
    }

    private static Optional<Integer> failureReason(HeldObject object, byte[] body) {
        for (JsonNode item : items(body, "00081198")) {
            if (uid(item).equals(object.sopInstanceUid())) {
                JsonNode reason = item.path("00081197").path("Value").path(0);
                return reason.isInt() ? Optional.of(reason.intValue()) : Optional.of(Status.PROCESSING_FAILURE.code());
            }
        }
        return Optional.empty();
    }

    private static boolean names(HeldObject object, byte[] body, String sequence) {
        for (JsonNode item : items(body, sequence)) {
            if (uid(item).equals(object.sopInstanceUid())) {
                return true;
            }
        }
        return false;
    }

    private static String uid(JsonNode item) {
        return item.path("00081155").path("Value").path(0).asText();
    }

    private static JsonNode items(byte[] body, String sequence) {
        try {
            JsonNode root = JSON.readTree(new String(body, StandardCharsets.UTF_8));
            JsonNode first = root.isArray() ? root.path(0) : root;
            return first.path(sequence).path("Value");
        } catch (JsonProcessingException e) {
            return JSON.createArrayNode(); // an answer in another form has nothing to say about single objects
        }
    }

    @Override
    public Proof prove(Question question) {
        HeldObject object = question.object();
        String path = "/studies/" + object.identity().studyInstanceUid() + "/series/"
                + object.identity().seriesInstanceUid() + "/instances/" + object.sopInstanceUid();
        try {
            HttpResponse<InputStream> answer = peer.send(
                    peer.request(path)
                            .header("Accept", "multipart/related; type=\"" + DICOM + "\"; transfer-syntax=*")
                            .GET(),
                    object.size());
            try (InputStream in = answer.body()) {
                return judged(object, answer, in);
            }
        } catch (WebPeer.Unanswered e) {
            return Proof.of(Finding.DESTINATION_LATER, String.valueOf(e.getMessage()));
        } catch (IOException | UncheckedIOException e) {
            boolean late = e instanceof HttpTimeoutException || e.getCause() instanceof HttpTimeoutException;
            return Proof.of(
                    Finding.DESTINATION_LATER,
                    late
                            ? "The archive stopped in the middle of the object."
                            : "The connection broke while the object came back.");
        }
    }

    private Proof judged(HeldObject object, HttpResponse<InputStream> answer, InputStream in) throws IOException {
        int status = answer.statusCode();
        if (status == NOT_FOUND || status == GONE) {
            return Proof.of(
                    Finding.MISSING,
                    "The archive does not hand it out (" + status + "); what is missed twice is sent again.");
        }
        if (status == NOT_ACCEPTABLE) {
            return Proof.of(Finding.NOT_OFFERED, "The archive hands no DICOM objects back (406).");
        }
        if (status != OK) {
            return new Proof(
                    Verdicts.ofHttp(status) == Verdict.DESTINATION_LATER ? Finding.DESTINATION_LATER : Finding.LATER,
                    new Answer(Integer.toString(status), "The archive does not hand it back."),
                    retryAfter(answer));
        }
        Matcher boundary =
                BOUNDARY.matcher(answer.headers().firstValue("Content-Type").orElse(""));
        if (!boundary.find()) {
            return ReadBack.compare(archive, object, in);
        }
        String text = boundary.group(1) == null ? boundary.group(2) : boundary.group(1);
        try {
            Optional<MultipartReader.Part> part = new MultipartReader(in, text).next();
            return part.isPresent()
                    ? ReadBack.compare(archive, object, part.get().body())
                    : Proof.of(Finding.MISSING, "The archive's answer is empty; what is missed twice is sent again.");
        } catch (Refusal refusal) {
            return Proof.of(Finding.LATER, refusal.problem().detail());
        }
    }

    @Override
    public void rest() {
        // the HTTP client keeps and closes its connections by itself
    }
}
