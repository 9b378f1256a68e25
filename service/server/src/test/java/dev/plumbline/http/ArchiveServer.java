// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.Intake;
import dev.plumbline.archive.LowWater;
import dev.plumbline.archive.Outbound;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.Javalin;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/** The DICOMweb routes alone on a free loopback port, and a client. */
final class ArchiveServer implements AutoCloseable {
    static final String DICOM_PARTS = "multipart/related; type=\"application/dicom\"; boundary=\"between the parts\"";

    final Path data;
    final Archive archive;
    private final DataFolder folder;
    private final SqliteStore store;
    private final Javalin javalin;
    private final HttpClient client = HttpClient.newHttpClient();

    ArchiveServer(Path data, LowWater lowWater) throws IOException {
        this(data, Intake.above(lowWater));
    }

    ArchiveServer(Path data, Intake intake) throws IOException {
        this.data = data;
        folder = DataFolder.open(data);
        store = SqliteStore.open(data.resolve("store.sqlite"));
        archive = new Archive(folder, store, intake, Outbound.NOWHERE);
        javalin = Javalin.create(config -> {
                    config.jetty.host = "127.0.0.1";
                    config.startup.showJavalinBanner = false;
                    config.routes.exception(
                            Refusal.class,
                            (refusal, ctx) -> ctx.status(status(refusal.problem()))
                                    .contentType("application/problem+json")
                                    .result("{\"detail\":\"" + refusal.problem().detail() + "\"}"));
                    new DicomWebRoutes(archive).register(config);
                })
                .start(0);
    }

    ArchiveServer(Path data) throws IOException {
        this(data, new LowWater(0, 0));
    }

    /** As the service's own table has it for the problems that these routes can have. */
    private static int status(Problem problem) {
        if (problem instanceof Problem.NotHeld) {
            return 404;
        }
        if (problem instanceof Problem.NotAcceptable) {
            return 406;
        }
        if (problem instanceof Problem.MediaTypeNotTaken) {
            return 415;
        }
        if (problem instanceof Problem.TooLarge) {
            return 413;
        }
        return problem instanceof Problem.NoRoom ? 507 : 400;
    }

    int port() {
        return javalin.port();
    }

    URI uri(String path) {
        return URI.create("http://127.0.0.1:" + port() + "/dicomweb" + path);
    }

    HttpResponse<byte[]> get(String path, String accept) {
        return send(HttpRequest.newBuilder(uri(path)).header("Accept", accept).build());
    }

    HttpResponse<byte[]> json(String path) {
        return get(path, "application/dicom+json");
    }

    HttpResponse<byte[]> post(String path, String contentType, byte[] body) {
        return send(HttpRequest.newBuilder(uri(path))
                .header("Content-Type", contentType)
                .POST(BodyPublishers.ofByteArray(body))
                .build());
    }

    HttpResponse<byte[]> stow(byte[]... objects) {
        return post("/studies", DICOM_PARTS, parts(List.of(objects)));
    }

    HttpResponse<byte[]> send(HttpRequest request) {
        try {
            return client.send(request, BodyHandlers.ofByteArray());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    static byte[] parts(List<byte[]> objects) {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        for (byte[] object : objects) {
            body.writeBytes(ascii("\r\n--between the parts\r\nContent-Type: application/dicom\r\n\r\n"));
            body.writeBytes(object);
        }
        body.writeBytes(ascii("\r\n--between the parts--\r\n"));
        return body.toByteArray();
    }

    static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    @Override
    public void close() throws IOException {
        javalin.stop();
        store.close();
        folder.close();
    }
}
