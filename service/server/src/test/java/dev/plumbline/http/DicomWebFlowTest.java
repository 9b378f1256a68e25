// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static dev.plumbline.archive.InventedObjects.imageFile;
import static dev.plumbline.archive.InventedObjects.instanceUid;
import static dev.plumbline.archive.InventedObjects.seriesUid;
import static dev.plumbline.archive.InventedObjects.studyUid;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.archive.LowWater;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DicomWebFlowTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String STUDY = "/studies/" + studyUid(1);
    private static final String SERIES = STUDY + "/series/" + seriesUid(1, 1);
    private static final String INSTANCE = SERIES + "/instances/" + instanceUid(1, 1, 1);

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

    @Test
    void takesObjectsInAndGivesTheSameBytesBack() throws IOException {
        HttpResponse<byte[]> stored = server.stow(imageFile(1, 1, 1), imageFile(1, 2, 1));
        assertThat(stored.statusCode()).isEqualTo(200);
        assertThat(tree(stored).at("/00081199/Value")).hasSize(2);
        assertThat(tree(stored).has("00081198")).isFalse();
        HttpResponse<byte[]> study =
                server.get(STUDY, "multipart/related; type=\"application/dicom\"; transfer-syntax=*");
        assertThat(parts(study)).containsExactly(imageFile(1, 1, 1), imageFile(1, 2, 1));
        assertThat(parts(server.get(SERIES, "*/*"))).containsExactly(imageFile(1, 1, 1));
        assertThat(server.get(INSTANCE, "application/dicom").body()).isEqualTo(imageFile(1, 1, 1));
    }

    @Test
    void takesASingleObjectWithoutParts() {
        HttpResponse<byte[]> stored = server.post(STUDY, "application/dicom", imageFile(1, 1, 1));
        assertThat(stored.statusCode()).isEqualTo(200);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "multipart/related; type=application/dicom; boundary=simple",
                "multipart/related; type=\"application/dicom\"; boundary=\"simple\"",
                "multipart/related;boundary=simple;type=\"application/dicom\"",
                "Multipart/Related; Type=Application/DICOM; Boundary=simple"
            })
    void readsTheBodysTypeHoweverItIsQuoted(String contentType) {
        byte[] body = new String(ArchiveServer.parts(List.of(imageFile(1, 1, 1))), StandardCharsets.ISO_8859_1)
                .replace("between the parts", "simple")
                .getBytes(StandardCharsets.ISO_8859_1);
        assertThat(server.post("/studies", contentType, body).statusCode()).isEqualTo(200);
    }

    @Test
    void saysForEachObjectWhatBecameOfIt() throws IOException {
        server.stow(imageFile(1, 1, 1));
        byte[] other = DicomFile.encode(InventedObjects.image(1, 1, 1).put(Tag.PATIENT_ID, "SOMEBODY-ELSE"));
        HttpResponse<byte[]> answer = server.stow(imageFile(1, 1, 1), other, new byte[300], imageFile(1, 1, 2));
        assertThat(answer.statusCode()).isEqualTo(202);
        JsonNode tree = tree(answer);
        assertThat(tree.at("/00081199/Value")).hasSize(2);
        assertThat(tree.at("/00081198/Value")).hasSize(1);
        assertThat(tree.at("/00081198/Value/0/00081155/Value/0").asText()).isEqualTo(instanceUid(1, 1, 1));
        assertThat(tree.at("/00081198/Value/0/00081197/Value/0").asInt()).isEqualTo(0x0111);
        assertThat(tree.at("/0008119A/Value/0/00081197/Value/0").asInt()).isEqualTo(0xC000);
    }

    @Test
    void answersConflictWhenNothingWasKept() throws IOException {
        HttpResponse<byte[]> answer = server.post(
                "/studies/" + studyUid(2), ArchiveServer.DICOM_PARTS, ArchiveServer.parts(List.of(imageFile(1, 1, 1))));
        assertThat(answer.statusCode()).isEqualTo(409);
        assertThat(tree(answer).at("/00081198/Value/0/00081197/Value/0").asInt())
                .isEqualTo(0xC001);
        assertThat(server.json("/studies").statusCode()).isEqualTo(204);
    }

    @ParameterizedTest
    @CsvSource({
        "application/json,415",
        "multipart/related; type=\"application/dicom+xml\"; boundary=x,415",
        "multipart/form-data; boundary=x,415",
        "application/zip,415",
        "multipart/related; type=\"application/dicom\",400",
        "multipart/related; type=\"application/dicom\"; boundary=other,400"
    })
    void refusesBodiesItDoesNotTake(String contentType, int status) {
        HttpResponse<byte[]> answer =
                server.post("/studies", contentType, ArchiveServer.parts(List.of(imageFile(1, 1, 1))));
        assertThat(answer.statusCode()).isEqualTo(status);
        assertThat(answer.headers().firstValue("Content-Type")).contains("application/problem+json");
    }

    @Test
    void refusesACompressedBody() {
        HttpRequest request = HttpRequest.newBuilder(server.uri("/studies"))
                .header("Content-Type", "application/dicom")
                .header("Content-Encoding", "gzip")
                .POST(HttpRequest.BodyPublishers.ofByteArray(imageFile(1, 1, 1)))
                .build();
        assertThat(server.send(request).statusCode()).isEqualTo(415);
    }

    @Test
    void refusesATruncatedBodyAndKeepsNothingOfItsLastObject() {
        byte[] body = ArchiveServer.parts(List.of(imageFile(1, 1, 1), imageFile(1, 1, 2)));
        HttpResponse<byte[]> answer =
                server.post("/studies", ArchiveServer.DICOM_PARTS, Arrays.copyOf(body, body.length - 300));
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(server.archive.store().object(instanceUid(1, 1, 2))).isEmpty();
    }

    @Test
    void refusesBeforeReadingWhenTheDiskIsTooFull() throws IOException {
        try (ArchiveServer full = new ArchiveServer(root.resolve("full"), new LowWater(Long.MAX_VALUE, 0))) {
            assertThat(full.stow(imageFile(1, 1, 1)).statusCode()).isEqualTo(507);
        }
    }

    @Test
    void answersNothingFoundWithoutABody() {
        HttpResponse<byte[]> answer = server.json("/studies?PatientID=nobody");
        assertThat(answer.statusCode()).isEqualTo(204);
        assertThat(answer.body()).isEmpty();
    }

    @Test
    void findsStudiesWithTheirCounts() throws IOException {
        server.stow(imageFile(1, 1, 1), imageFile(1, 1, 2), imageFile(1, 2, 1), imageFile(2, 1, 1));
        JsonNode studies = tree(
                server.json("/studies?limit=101&offset=0&fuzzymatching=false" + "&includefield=00081030,00080060"));
        assertThat(studies).hasSize(2);
        JsonNode newest = studies.get(0);
        assertThat(text(newest, "0020000D")).isEqualTo(studyUid(2));
        JsonNode study = studies.get(1);
        assertThat(text(study, "0020000D")).isEqualTo(studyUid(1));
        assertThat(study.at("/00201206/Value/0").asInt()).isEqualTo(2);
        assertThat(study.at("/00201208/Value/0").asInt()).isEqualTo(3);
        assertThat(text(study, "00080061")).isEqualTo("US");
        assertThat(text(study, "00081030")).isEqualTo("Invented study 1");
        assertThat(study.at("/00100010/Value/0/Alphabetic").asText()).isEqualTo("Invented^Person 1");
        assertThat(study.at("/00080090").has("Value")).isFalse();
        assertThat(resolved("/studies", text(study, "00081190"))).isEqualTo(server.uri("/studies/" + studyUid(1)));
    }

    @Test
    void warnsThatNamesAreMatchedLiterally() throws IOException {
        server.stow(imageFile(1, 1, 1));
        assertThat(server.json("/studies?fuzzymatching=true").headers().firstValue("Warning"))
                .hasValueSatisfying(warning -> assertThat(warning).startsWith("299 "));
    }

    @Test
    void findsSeriesAndInstancesOnEveryPath() throws IOException {
        server.stow(imageFile(1, 1, 1), imageFile(1, 1, 2), imageFile(1, 2, 1), imageFile(2, 1, 1));
        JsonNode series = tree(server.json(STUDY + "/series?includefield=00080021,00080031,0008103E,00200011"));
        assertThat(series).hasSize(2);
        assertThat(text(series.get(0), "0008103E")).isEqualTo("Invented series 1");
        assertThat(series.get(0).at("/00201209/Value/0").asInt()).isEqualTo(2);
        assertThat(series.get(0).has("00100010")).isFalse();
        assertThat(tree(server.json("/series"))).hasSize(3);
        assertThat(tree(server.json("/series")).get(0).has("00100010")).isTrue();
        assertThat(tree(server.json("/series?PatientID=INVENTED-2"))).hasSize(1);
        assertThat(tree(server.json(SERIES + "/instances"))).hasSize(2);
        assertThat(tree(server.json(STUDY + "/instances"))).hasSize(3);
        assertThat(tree(server.json("/instances"))).hasSize(4);
        assertThat(tree(server.json("/instances?SOPInstanceUID=" + instanceUid(1, 2, 1))))
                .hasSize(1);
        JsonNode instance = tree(server.json(SERIES + "/instances?InstanceNumber=2&includefield=all"))
                .get(0);
        assertThat(text(instance, "00080018")).isEqualTo(instanceUid(1, 1, 2));
        assertThat(instance.at("/00280010/Value/0").asInt()).isEqualTo(InventedObjects.ROWS);
        assertThat(text(instance, "00280004")).isEqualTo("MONOCHROME2");
    }

    @Test
    void givesMetadataWithBulkDataThatResolves() throws IOException {
        server.stow(imageFile(1, 1, 1));
        for (String path : List.of(STUDY + "/metadata", SERIES + "/metadata", INSTANCE + "/metadata")) {
            HttpResponse<byte[]> answer = server.json(path);
            assertThat(answer.headers().firstValue("Content-Type")).contains("application/dicom+json");
            JsonNode object = tree(answer).get(0);
            assertThat(text(object, "00080018")).isEqualTo(instanceUid(1, 1, 1));
            URI bulk = resolved(path, object.at("/7FE00010/BulkDataURI").asText());
            HttpResponse<byte[]> pixels = server.send(HttpRequest.newBuilder(bulk)
                    .header("Accept", "multipart/related; type=\"application/octet-stream\"")
                    .build());
            assertThat(parts(pixels)).containsExactly(samples(1));
        }
    }

    /** JSON has one encoding, whatever the server would take for the media type: DICOM PS3.18 F.2. */
    @Test
    void keepsNamesOfEveryScript() throws IOException {
        String name = "Y\u00e1mada^T\u00e5ro=\u5c71\u7530^\u592a\u90ce";
        server.stow(DicomFile.encode(InventedObjects.image(1, 1, 1).put(Tag.PATIENT_NAME, name)));
        for (String path : List.of(INSTANCE + "/metadata", "/studies", "/instances?includefield=PatientName")) {
            String answer = new String(server.json(path).body(), StandardCharsets.UTF_8);
            assertThat(answer).as(path).contains("Y\u00e1mada^T\u00e5ro", "\u5c71\u7530^\u592a\u90ce");
        }
    }

    /** As the viewer's setting relativeResolution: studies does with what it read from a series. */
    @Test
    void findsBulkDataThatAViewerResolvesAgainstTheStudy() throws IOException {
        server.stow(imageFile(1, 1, 1));
        String reference = tree(server.json(SERIES + "/metadata"))
                .at("/0/7FE00010/BulkDataURI")
                .asText();
        assertThat(reference).isEqualTo("instances/" + instanceUid(1, 1, 1) + "/bulkdata/7FE00010");
        assertThat(parts(server.get(STUDY + "/" + reference, "*/*"))).containsExactly(samples(1));
        assertThat(server.get("/studies/" + studyUid(2) + "/" + reference, "*/*")
                        .statusCode())
                .isEqualTo(404);
    }

    @Test
    void givesFramesAsTheViewerAsks() throws IOException {
        server.stow(DicomFile.encode(InventedObjects.cine(1, 1, 1, 3)));
        HttpResponse<byte[]> one = server.get(
                INSTANCE + "/frames/2", "multipart/related; type=application/octet-stream; transfer-syntax=*");
        assertThat(one.statusCode()).isEqualTo(200);
        byte[] second = new byte[InventedObjects.ROWS * InventedObjects.COLUMNS];
        Arrays.fill(second, (byte) 2);
        assertThat(parts(one)).containsExactly(second);
        List<byte[]> all = parts(server.get(INSTANCE + "/frames/3,1,2", "*/*"));
        assertThat(all).extracting(frame -> (int) frame[0]).containsExactly(3, 1, 2);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "/frames/0|404",
                "/frames/2|404",
                "/frames/x|400",
                "/frames/1,|400",
                "/frames/1,,1|400",
                "/frames/999999999999|400",
                "/bulkdata/00420011|404",
                "/bulkdata/7fe00010|400",
                "/bulkdata/..%2F..%2Fstore.sqlite|400",
                "/rendered?viewport=0,0|400",
                "/rendered?viewport=1|400"
            })
    void refusesPartsThatAreNotThere(String below, int status) {
        server.stow(imageFile(1, 1, 1));
        assertThat(server.get(INSTANCE + below, "*/*").statusCode()).isEqualTo(status);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "|application/xml",
                "|multipart/related; type=\"application/dicom\"; transfer-syntax=1.2.840.10008.1.2.4.50",
                "/metadata|application/dicom+xml",
                "/metadata|multipart/related; type=\"application/dicom+xml\"",
                "/frames/1|multipart/related; type=\"image/jpeg\"",
                "/frames/1|text/html",
                "/rendered|image/bmp",
                "/rendered|application/dicom"
            })
    void refusesMediaTypesItCannotGive(String below, String accept) {
        server.stow(imageFile(1, 1, 1));
        String path = INSTANCE + Optional.ofNullable(below).orElse("");
        assertThat(server.get(path, accept).statusCode()).isEqualTo(406);
    }

    @Test
    void rendersPicturesInTheAcceptedType() throws IOException {
        server.stow(imageFile(1, 1, 1));
        HttpResponse<byte[]> png = server.get(INSTANCE + "/rendered", "image/png");
        assertThat(png.headers().firstValue("Content-Type")).contains("image/png");
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(png.body()));
        assertThat(image.getWidth()).isEqualTo(InventedObjects.COLUMNS);
        assertThat(image.getRaster().getSample(3, 2, 0)).isEqualTo(1 + 2 * InventedObjects.COLUMNS + 3);
        HttpResponse<byte[]> jpeg = server.get(INSTANCE + "/frames/1/rendered", "image/jpeg, image/png");
        assertThat(jpeg.headers().firstValue("Content-Type")).contains("image/jpeg");
        assertThat(jpeg.body()).startsWith((byte) 0xff, (byte) 0xd8);
        BufferedImage small = ImageIO.read(new ByteArrayInputStream(
                server.get(INSTANCE + "/rendered?viewport=5,5", "image/png").body()));
        assertThat(small.getWidth()).isEqualTo(5);
        assertThat(small.getHeight()).isEqualTo(4);
        for (String path : List.of(STUDY, SERIES, INSTANCE, INSTANCE + "/frames/1")) {
            assertThat(server.get(path + "/thumbnail", "*/*").statusCode()).isEqualTo(200);
        }
    }

    @Test
    void forbidsGuessingOfTypes() {
        server.stow(imageFile(1, 1, 1));
        for (String path : List.of("/studies", STUDY, INSTANCE + "/frames/1", INSTANCE + "/rendered")) {
            assertThat(server.get(path, "*/*").headers().firstValue("X-Content-Type-Options"))
                    .contains("nosniff");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"/studies/1.2", "/studies/1.2/series/3.4", "/studies/1.2/series/3.4/instances/5.6"})
    void saysWhatIsNotHeld(String path) {
        assertThat(server.get(path, "*/*").statusCode()).isEqualTo(404);
        assertThat(server.json(path + "/metadata").statusCode()).isEqualTo(404);
    }

    @Test
    void doesNotFindAnInstanceUnderAnotherStudy() {
        server.stow(imageFile(1, 1, 1), imageFile(2, 1, 1));
        String wrong = "/studies/" + studyUid(2) + "/series/" + seriesUid(1, 1) + "/instances/" + instanceUid(1, 1, 1);
        assertThat(server.get(wrong, "*/*").statusCode()).isEqualTo(404);
    }

    @Test
    void givesAnEncapsulatedDocumentInItsOwnType() throws IOException {
        byte[] document = new byte[2000];
        System.arraycopy(ArchiveServer.ascii("%PDF-1.4"), 0, document, 0, 8);
        DataSet pdf = InventedObjects.document(1, 1, 1, document);
        assertThat(server.stow(DicomFile.encode(pdf)).statusCode()).isEqualTo(200);
        JsonNode object = tree(server.json(SERIES + "/metadata")).get(0);
        URI bulk = resolved(
                SERIES + "/metadata", object.at("/00420011/BulkDataURI").asText());
        HttpResponse<byte[]> answer = server.send(HttpRequest.newBuilder(bulk)
                .header(
                        "Accept",
                        "multipart/related; type=\"application/pdf\", multipart/related;"
                                + " type=\"application/octet-stream\"")
                .build());
        assertThat(parts(answer)).containsExactly(document);
        assertThat(new String(answer.body(), StandardCharsets.ISO_8859_1)).contains("Content-Type: application/pdf");
    }

    private URI resolved(String request, String reference) {
        return server.uri(request).resolve(reference);
    }

    private static byte[] samples(int instance) {
        byte[] samples = new byte[InventedObjects.ROWS * InventedObjects.COLUMNS];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (byte) (instance + i);
        }
        return samples;
    }

    private static String text(JsonNode object, String name) {
        return object.at("/" + name + "/Value/0").asText();
    }

    private static JsonNode tree(HttpResponse<byte[]> response) throws IOException {
        return JSON.readTree(response.body());
    }

    /** The parts of a multipart answer, cut at its boundary without the code under test. */
    private static List<byte[]> parts(HttpResponse<byte[]> response) {
        assertThat(response.statusCode()).isEqualTo(200);
        String type = response.headers().firstValue("Content-Type").orElseThrow();
        String boundary = type.replaceAll(".*boundary=", "");
        String body = new String(response.body(), StandardCharsets.ISO_8859_1);
        List<byte[]> parts = new ArrayList<>();
        for (String piece : body.split("(\r\n)?--" + boundary, -1)) {
            if (!piece.isEmpty() && !piece.startsWith("--")) {
                parts.add(piece.substring(piece.indexOf("\r\n\r\n") + 4).getBytes(StandardCharsets.ISO_8859_1));
            }
        }
        return parts;
    }
}
