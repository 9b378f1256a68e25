// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.Dispatch.Answer;
import dev.plumbline.archive.HeldObject;
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
import java.time.Clock;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** By STOW-RS, proved by WADO-RS. Source: DICOM PS3.18, 10.4, 10.5 and annex I. */
final class WebCarrier implements Carrier {
    private static final int OK = 200;
    private static final int UNAUTHORISED = 401;
    private static final int FORBIDDEN = 403;
    private static final int NOT_FOUND = 404;
    private static final int GONE = 410;
    private static final int NOT_ACCEPTABLE = 406;
    private static final int LONGEST_ANSWER = 1 << 20;
    private static final String DICOM = "application/dicom";
    private static final Pattern BOUNDARY = Pattern.compile("boundary=(?:\"([^\"]+)\"|([^;\\s]+))");

    private final Archive archive;
    private final WebPeer peer;
    private final Clock clock;
    private boolean tokenRefused;

    WebCarrier(Archive archive, WebPeer peer, Clock clock) {
        this.archive = archive;
        this.peer = peer;
        this.clock = clock;
    }

    @Override
    public Outcome send(HeldObject object) {
        try {
            HttpResponse<InputStream> answer = peer.send(peer.request("/studies")
                    .header("Accept", "application/dicom+json")
                    .header("Content-Type", MultipartWriter.contentType(DICOM, boundary(object)))
                    .POST(body(object)));
            try (InputStream in = answer.body()) {
                return judged(new StowAnswer(object.sopInstanceUid(), answer, in.readNBytes(LONGEST_ANSWER)));
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

    /** A refused token is read again once, as it may just have been renewed. */
    private Outcome judged(StowAnswer answer) {
        boolean refusedBefore = tokenRefused;
        tokenRefused = answer.status() == UNAUTHORISED;
        return tokenRefused && !refusedBefore
                ? Outcome.of(Verdict.DESTINATION_LATER, "401", "The archive refuses the token, which is read again.")
                : answer.outcome(clock.instant());
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
            boolean all = status == UNAUTHORISED
                    || status == FORBIDDEN
                    || Verdicts.ofHttp(status) == Verdict.DESTINATION_LATER;
            return new Proof(
                    all ? Finding.DESTINATION_LATER : Finding.LATER,
                    new Answer(Integer.toString(status), "The archive does not hand it back."),
                    RetryAfter.of(answer.headers(), clock.instant()));
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
