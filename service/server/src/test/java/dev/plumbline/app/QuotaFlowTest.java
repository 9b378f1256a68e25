// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import dev.plumbline.dimse.Association;
import dev.plumbline.dimse.Peer;
import dev.plumbline.dimse.Reply;
import dev.plumbline.dimse.Requestor;
import dev.plumbline.dimse.ServiceUser;
import dev.plumbline.dimse.Timeouts;
import dev.plumbline.dimse.Wanted;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a site configures of how much is let in holds at every door. TRUST 2.2 (flooding). */
class QuotaFlowTest {
    private static final String EXPLICIT = "1.2.840.10008.1.2.1";

    @TempDir
    Path folder;

    private final HttpClient client = HttpClient.newHttpClient();

    private Service service() throws IOException {
        Path config = Files.writeString(folder.resolve("plumbline.json"), """
                { "schema": "plumbline-service/1", "port": 0, "dataFolder": "data",
                  "intake": { "objectMegabytes": 2, "httpDailyMegabytes": 1 },
                  "dicom": { "port": 0 },
                  "peers": [
                    { "name": "us1", "aeTitle": "US1", "addresses": ["127.0.0.1"], "dailyMegabytes": 1 },
                    { "name": "us2", "aeTitle": "US2", "addresses": ["127.0.0.1"] } ] }
                """);
        return Service.start(Main.settings(ServiceConfig.read(config)));
    }

    private static byte[] file(int instance, int side) {
        return DicomFile.encode(InventedObjects.image(1, 1, instance)
                .put(Tag.ROWS, side)
                .put(Tag.COLUMNS, side)
                .put(Tag.PIXEL_DATA, new byte[side * side]));
    }

    private HttpResponse<String> sent(Service service, byte[] file) throws Exception {
        return client.send(
                HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + service.port() + "/v1/frames"))
                        .header("Content-Type", "application/dicom")
                        .POST(HttpRequest.BodyPublishers.ofByteArray(file))
                        .build(),
                HttpResponse.BodyHandlers.ofString());
    }

    private Reply stored(Service service, String aeTitle, int instance, int side) throws IOException {
        Path file = Files.write(folder.resolve(aeTitle + instance + ".dcm"), file(instance, side));
        Peer peer = new Peer("PLUMBLINE", "127.0.0.1", service.dicomPort().orElseThrow(), Optional.empty());
        try (Association association = new Requestor(aeTitle, Timeouts.USUAL)
                .open(peer, List.of(Wanted.use(InventedObjects.ULTRASOUND, List.of(EXPLICIT))))) {
            return new ServiceUser(association, Timeouts.USUAL)
                    .store(new ServiceUser.StoredFile(
                            file, InventedObjects.ULTRASOUND, InventedObjects.instanceUid(1, 1, instance), EXPLICIT));
        }
    }

    private String status(Service service) throws Exception {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + service.port() + "/v1/status"))
                .build();
        String body = client.send(request, HttpResponse.BodyHandlers.ofString()).body();
        return new ObjectMapper().readTree(body).path("warnings").toString();
    }

    @Test
    void whatComesOverHttpHasOneQuotaTogether() throws Exception {
        try (Service service = service()) {
            assertThat(sent(service, file(1, 768)).statusCode()).isEqualTo(201);
            HttpResponse<String> refused = sent(service, file(2, 768));
            assertThat(refused.statusCode()).isEqualTo(507);
            assertThat(refused.body())
                    .contains("What may come from HTTP in one day, 1 MB, is used up.")
                    .contains("intake.httpDailyMegabytes");
            assertThat(status(service)).isEqualTo("[]");
            assertThat(sent(service, file(3, 600)).statusCode()).isEqualTo(201);
            assertThat(status(service))
                    .contains("Less than a tenth is left until midnight of what may come from HTTP in one day, 1 MB.");
            assertThat(sent(service, file(4, 1500)).statusCode())
                    .as("larger than any object")
                    .isEqualTo(413);
        }
    }

    @Test
    void aPeerHasItsOwnAndTheOthersHaveNone() throws Exception {
        try (Service service = service()) {
            assertThat(stored(service, "US1", 1, 768).isSuccess()).isTrue();
            Reply refused = stored(service, "US1", 2, 768);
            assertThat(refused.code()).isEqualTo("A700");
            assertThat(refused.comment()).startsWith("What may come from US1 in one day, 1 MB");
            assertThat(stored(service, "US2", 3, 768).isSuccess()).isTrue();
            assertThat(stored(service, "US2", 4, 768).isSuccess()).isTrue();
            assertThat(stored(service, "US2", 5, 1500).code())
                    .as("larger than any object")
                    .isEqualTo("A700");
        }
    }
}
