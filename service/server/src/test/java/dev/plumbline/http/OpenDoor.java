// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** A client at an open door, for tests through a real socket. */
final class OpenDoor implements AutoCloseable {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private final HttpClient client = HttpClient.newHttpClient();
    private final Doors doors;

    final ServiceRooms rooms;

    OpenDoor() throws IOException {
        rooms = ServiceRooms.empty();
        doors = Doors.start(
                Doors.Address.loopback(0),
                rooms.rooms(),
                new Doors.Service("0.0-test", () -> true, () -> "incident-7"));
    }

    int port() {
        return doors.port();
    }

    List<String> routes() {
        return doors.routes();
    }

    /** An answer with its body. */
    record Answer(int status, String type, HttpResponse<byte[]> response) {
        JsonNode json() throws IOException {
            return MAPPER.readTree(response.body());
        }

        String text() {
            return new String(response.body(), StandardCharsets.UTF_8);
        }

        String header(String name) {
            return response.headers().firstValue(name).orElse("");
        }
    }

    HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + doors.port() + path));
    }

    Answer send(HttpRequest.Builder request) throws Exception {
        HttpResponse<byte[]> response = client.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
        return new Answer(
                response.statusCode(),
                response.headers().firstValue("Content-Type").orElse(""),
                response);
    }

    Answer get(String path) throws Exception {
        return send(request(path).GET());
    }

    Answer post(String path, String json) throws Exception {
        return send(request(path)
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(json)));
    }

    Answer postDicom(String path, byte[] file) throws Exception {
        return send(request(path)
                .header("Content-Type", "application/dicom")
                .POST(HttpRequest.BodyPublishers.ofByteArray(file)));
    }

    /** Bytes to the socket as they are, and everything that comes back. */
    String raw(String request) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), doors.port())) {
            socket.setSoTimeout(10_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().flush();
            try (InputStream in = socket.getInputStream()) {
                return new String(in.readAllBytes(), StandardCharsets.UTF_8);
            }
        }
    }

    @Override
    public void close() throws IOException {
        doors.close();
        rooms.close();
    }
}
