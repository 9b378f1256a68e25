// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.document.StrictJson;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Speaks to a running service as any other client would: through its HTTP API and DICOMweb, with nothing but a socket. */
final class DemoClient {
    private static final byte[] BLANK_LINE = {'\r', '\n', '\r', '\n'};

    private final HttpClient client = HttpClient.newHttpClient();
    private final URI service;

    DemoClient(URI service) {
        this.service = service;
    }

    URI uri(String path) {
        return service.resolve(path);
    }

    JsonNode postJson(String path, String json) {
        return json(send(request(path, "application/json").POST(BodyPublishers.ofString(json))));
    }

    JsonNode postDicom(String path, byte[] file) {
        return json(send(request(path, "application/dicom").POST(BodyPublishers.ofByteArray(file))));
    }

    JsonNode getJson(String path) {
        return json(send(HttpRequest.newBuilder(service.resolve(path)).header("Accept", "application/dicom+json")));
    }

    byte[] get(String path, String accept) {
        return send(HttpRequest.newBuilder(service.resolve(path)).header("Accept", accept))
                .body();
    }

    /** One instance by WADO-RS: the single part of the multipart answer. */
    byte[] retrieve(String path) {
        HttpResponse<byte[]> answer = send(HttpRequest.newBuilder(service.resolve(path))
                .header("Accept", "multipart/related; type=\"application/dicom\"; transfer-syntax=*"));
        byte[] body = answer.body();
        int start = indexOf(body, BLANK_LINE, 0) + BLANK_LINE.length;
        String type = answer.headers().firstValue("Content-Type").orElseThrow();
        String boundary = type.replaceFirst(".*boundary=\"?([^\";]+)\"?.*", "$1");
        int end = indexOf(body, ("\r\n--" + boundary).getBytes(StandardCharsets.US_ASCII), start);
        return Arrays.copyOfRange(body, start, end);
    }

    private static int indexOf(byte[] bytes, byte[] wanted, int from) {
        for (int i = from; i <= bytes.length - wanted.length; i++) {
            if (Arrays.equals(bytes, i, i + wanted.length, wanted, 0, wanted.length)) {
                return i;
            }
        }
        throw new IllegalStateException("The answer is no multipart body.");
    }

    private HttpRequest.Builder request(String path, String type) {
        return HttpRequest.newBuilder(service.resolve(path)).header("Content-Type", type);
    }

    private HttpResponse<byte[]> send(HttpRequest.Builder request) {
        try {
            HttpResponse<byte[]> answer = client.send(request.build(), BodyHandlers.ofByteArray());
            if (answer.statusCode() >= 300) {
                throw new IllegalStateException(answer.request().method() + " " + answer.uri() + " was answered "
                        + answer.statusCode() + ": " + new String(answer.body(), StandardCharsets.UTF_8));
            }
            return answer;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("The demo was interrupted.", e);
        }
    }

    private static JsonNode json(HttpResponse<byte[]> answer) {
        return StrictJson.read(answer.body());
    }
}
