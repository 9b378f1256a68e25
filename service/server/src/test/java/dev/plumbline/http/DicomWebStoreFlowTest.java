// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static dev.plumbline.archive.InventedObjects.imageFile;
import static dev.plumbline.archive.InventedObjects.instanceUid;
import static dev.plumbline.archive.InventedObjects.studyUid;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.archive.Intake;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.archive.LowWater;
import dev.plumbline.archive.Quotas;
import dev.plumbline.archive.Sender;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a store is answered. DICOM PS3.18, annex I. */
class DicomWebStoreFlowTest {
    private static final String EXPLICIT = "1.2.840.10008.1.2.1\0";

    /** No transfer syntax at all, of the same length. */
    private static final String NOT_TAKEN = "1.2.840.10008.1.2.9\0";

    @TempDir
    Path root;

    private ArchiveServer server;

    @BeforeEach
    void start() throws IOException {
        server = new ArchiveServer(root.resolve("data"));
    }

    @AfterEach
    void stop() throws IOException {
        server.close();
    }

    /** Retrieve URL of the study is of type 2: there, with or without a value. */
    @Test
    void saysWhereTheStudyIs() throws IOException {
        JsonNode one = tree(server.stow(imageFile(1, 1, 1), imageFile(1, 2, 1)));
        assertThat(one.at("/00081190/vr").asText()).isEqualTo("UR");
        assertThat(one.at("/00081190/Value/0").asText()).isEqualTo("studies/" + studyUid(1));
        JsonNode two = tree(server.stow(imageFile(1, 1, 2), imageFile(2, 1, 1)));
        assertThat(two.at("/00081190/vr").asText()).isEqualTo("UR");
        assertThat(two.path("00081190").has("Value")).isFalse();
        JsonNode none = tree(server.stow(new byte[300]));
        assertThat(none.at("/00081190/vr").asText()).isEqualTo("UR");
    }

    @Test
    void saysThatATransferSyntaxIsNotTaken() throws IOException {
        byte[] other = replaced(imageFile(1, 1, 1), EXPLICIT, NOT_TAKEN);
        HttpResponse<byte[]> answer = server.stow(other);
        assertThat(answer.statusCode()).isEqualTo(409);
        assertThat(tree(answer).at("/0008119A/Value/0/00081197/Value/0").asInt())
                .isEqualTo(0xC122);
    }

    /** What its bytes say of an object that is whole is said of it, also where its class is not kept. */
    @Test
    void namesAnObjectOfAClassThatIsNotKept() throws IOException {
        byte[] file = DicomFile.encode(InventedObjects.image(1, 1, 1).put(Tag.SOP_CLASS_UID, "1.2.840.10008.1.9"));
        JsonNode answer = tree(server.stow(file));
        assertThat(answer.at("/00081198/Value/0/00081155/Value/0").asText()).isEqualTo(instanceUid(1, 1, 1));
        assertThat(answer.at("/00081198/Value/0/00081197/Value/0").asInt()).isEqualTo(0x0122);
    }

    @Test
    void saysInWordsWhatIsWrongWithWhichObject() {
        List<String> warnings =
                server.stow(imageFile(1, 1, 1), new byte[300]).headers().allValues("Warning");
        assertThat(warnings).hasSize(1);
        assertThat(warnings.get(0)).startsWith("299 plumbline \"Object 2: ").contains("DICM");
        assertThat(server.stow(imageFile(1, 1, 1)).headers().allValues("Warning"))
                .isEmpty();
    }

    /** The type of the parts is a parameter that some senders leave out; the parts have their own. */
    @Test
    void takesPartsWhoseCommonTypeIsNotStated() {
        byte[] body = ArchiveServer.parts(List.of(imageFile(1, 1, 1)));
        assertThat(server.post("/studies", "multipart/related; boundary=\"between the parts\"", body)
                        .statusCode())
                .isEqualTo(200);
    }

    @Test
    void takesWhatTheQuotaOfTheDayAllowsAndRefusesTheRestWithA700() throws IOException {
        byte[] first = imageFile(1, 1, 1);
        Quotas quotas = new Quotas(Map.of(Sender.HTTP, first.length + 10L), Clock.systemUTC());
        Intake intake = new Intake(new LowWater(0, 0), Intake.MOST_BYTES, quotas);
        try (ArchiveServer bounded = new ArchiveServer(root.resolve("bounded"), intake)) {
            HttpResponse<byte[]> some = bounded.stow(first, imageFile(1, 1, 2));
            assertThat(some.statusCode()).isEqualTo(202);
            JsonNode failed = tree(some).path("0008119A").path("Value").path(0); // read no further than the quota
            assertThat(failed.at("/00081197/Value/0").asInt()).isEqualTo(0xA700);
            assertThat(bounded.stow(imageFile(1, 1, 3)).statusCode()).isEqualTo(507);
            assertThat(bounded.archive.store().objectCount()).isEqualTo(1);
        }
    }

    @Test
    void answers413WhereEveryObjectIsLargerThanTheSiteTakes() throws IOException {
        byte[] file = imageFile(1, 1, 1);
        Intake intake = new Intake(new LowWater(0, 0), file.length - 1L, new Quotas(Map.of(), Clock.systemUTC()));
        try (ArchiveServer bounded = new ArchiveServer(root.resolve("bounded"), intake)) {
            assertThat(bounded.stow(file).statusCode()).isEqualTo(413);
            assertThat(bounded.post("/studies", "application/dicom", file).statusCode())
                    .isEqualTo(413);
            assertThat(bounded.archive.store().objectCount()).isZero();
        }
    }

    private static byte[] replaced(byte[] bytes, String from, String to) {
        return new String(bytes, StandardCharsets.ISO_8859_1).replace(from, to).getBytes(StandardCharsets.ISO_8859_1);
    }

    private static JsonNode tree(HttpResponse<byte[]> response) throws IOException {
        return new ObjectMapper().readTree(response.body());
    }
}
