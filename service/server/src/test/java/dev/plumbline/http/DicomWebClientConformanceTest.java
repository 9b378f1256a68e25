// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.OutsideProgram;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The archive as programs of others see it: a viewer's DICOMweb library, DCMTK's encoders, pydicom. */
class DicomWebClientConformanceTest {
    private static final String OCTETS_AS_STORED =
            "multipart/related; type=application/octet-stream; transfer-syntax=*";

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
    void servesAViewersLibrary() throws Exception {
        byte[] first = InventedObjects.imageFile(1, 1, 1);
        byte[] second = InventedObjects.imageFile(1, 1, 2);
        Path one = Files.write(root.resolve("one.dcm"), first);
        Path two = Files.write(root.resolve("two.dcm"), second);
        byte[] printed = OutsideProgram.run(
                "node", "src/test/npm/dicomweb.mjs", server.uri("").toString(), one.toString(), two.toString());
        JsonNode got = new ObjectMapper().readTree(printed);
        assertThat(got.path("stored").asInt()).isEqualTo(2);
        assertThat(got.path("studies").asInt()).isEqualTo(1);
        assertThat(got.path("series").asInt()).isEqualTo(1);
        assertThat(got.path("instances").asInt()).isEqualTo(2);
        assertThat(got.path("nobody").asInt(-1)).isZero();
        assertThat(got.path("rows").asInt()).isEqualTo(InventedObjects.ROWS);
        assertThat(got.path("seriesMetadata").asInt()).isEqualTo(2);
        assertThat(got.path("instance").asText()).isEqualTo(sha256(first));
        assertThat(texts(got.path("wholeSeries"))).containsExactly(sha256(first), sha256(second));
        assertThat(texts(got.path("wholeStudy"))).containsExactly(sha256(first), sha256(second));
        byte[] samples =
                Arrays.copyOfRange(first, first.length - InventedObjects.ROWS * InventedObjects.COLUMNS, first.length);
        assertThat(got.path("frame").asText()).isEqualTo(sha256(samples));
        assertThat(got.path("bulk").asText()).isEqualTo(sha256(samples));
        assertThat(got.path("rendered").asText()).hasSize(64);
        assertThat(got.path("refused").asInt()).isEqualTo(404);
    }

    /** Encoders of DCMTK; the frame that is handed out is cut from the file by pydicom for comparison. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "dcmcrle|+ua|image/dicom-rle|0",
                "dcmcjpeg|+eb|image/jpeg|1",
                "dcmcjpeg|+e1|image/jpeg|-1",
                "dcmcjpls|+el|image/jls|0"
            })
    void handsOutCompressedFramesAsOthersStoredThem(String encoder, String option, String mediaType, int greyTolerance)
            throws IOException {
        Path plain = Files.write(root.resolve("plain.dcm"), DicomFile.encode(InventedObjects.cine(1, 1, 1, 3)));
        Path packed = root.resolve("packed.dcm");
        OutsideProgram.run(encoder, option, plain.toString(), packed.toString());
        assertThat(server.stow(Files.readAllBytes(packed)).statusCode()).isEqualTo(200);
        Identity found = onlyInstance();
        List<String> judged = frames(packed);
        for (String accept : List.of(OCTETS_AS_STORED, "multipart/related; type=\"" + mediaType + "\"")) {
            for (int frame = 1; frame <= 3; frame++) {
                HttpResponse<byte[]> answer = server.get(found.path() + "/frames/" + frame, accept);
                assertThat(answer.statusCode()).isEqualTo(200);
                assertThat(sha256(onlyPart(answer))).isEqualTo(judged.get(frame - 1));
                assertThat(new String(answer.body(), StandardCharsets.ISO_8859_1))
                        .contains(";transfer-syntax=" + found.transferSyntax());
            }
        }
        handsOutPlainFrames(found, Files.readAllBytes(plain), judged, greyTolerance);
        assertThat(server.get(found.path(), "application/dicom; transfer-syntax=*")
                        .body())
                .isEqualTo(Files.readAllBytes(packed));
        byte[] png =
                server.get(found.path() + "/frames/2/rendered", "image/png").body();
        int grey = ImageIO.read(new ByteArrayInputStream(png)).getRaster().getSample(4, 4, 0);
        assertThat(grey).isCloseTo(2, within(Math.max(0, greyTolerance)));
    }

    /**
     * Who names no transfer syntax gets plain samples; who names no type either gets what lost something as it is stored.
     *
     * @param greyTolerance below 0 where plain samples are not given
     */
    private void handsOutPlainFrames(Identity found, byte[] whole, List<String> judged, int greyTolerance) {
        int size = InventedObjects.ROWS * InventedObjects.COLUMNS;
        for (int frame = 1; frame <= 3; frame++) {
            String path = found.path() + "/frames/" + frame;
            HttpResponse<byte[]> plain = server.get(path, "multipart/related; type=application/octet-stream");
            if (greyTolerance < 0) {
                assertThat(plain.statusCode()).isEqualTo(406);
            } else {
                int end = whole.length - (3 - frame) * size;
                assertAlike(onlyPart(plain), Arrays.copyOfRange(whole, end - size, end), greyTolerance);
            }
            byte[] unnamed = onlyPart(server.get(path, "*/*"));
            if (greyTolerance == 0) {
                assertThat(unnamed).isEqualTo(onlyPart(plain));
            } else {
                assertThat(sha256(unnamed)).isEqualTo(judged.get(frame - 1));
            }
        }
    }

    private static void assertAlike(byte[] given, byte[] drawn, int tolerance) {
        assertThat(given).hasSameSizeAs(drawn);
        for (int i = 0; i < drawn.length; i++) {
            assertThat(given[i] & 0xff).isCloseTo(drawn[i] & 0xff, within(tolerance));
        }
    }

    @ParameterizedTest
    @CsvSource({"+te", "+tb", "+ti"})
    void handsOutPlainFramesLittleEndianWhateverTheFileIs(String option) throws IOException {
        Path plain = Files.write(root.resolve("plain.dcm"), DicomFile.encode(InventedObjects.deep(1, 1, 1)));
        Path converted = root.resolve("converted.dcm");
        OutsideProgram.run("dcmconv", option, plain.toString(), converted.toString());
        assertThat(server.stow(Files.readAllBytes(converted)).statusCode()).isEqualTo(200);
        byte[] frame = onlyPart(server.get(onlyInstance().path() + "/frames/1", OCTETS_AS_STORED));
        byte[] sent = Files.readAllBytes(plain);
        assertThat(frame).isEqualTo(Arrays.copyOfRange(sent, sent.length - frame.length, sent.length));
        assertThat(frame).hasSize(2 * InventedObjects.ROWS * InventedObjects.COLUMNS);
    }

    @Test
    void givesPydicomFilesThatItReads() throws IOException {
        server.stow(InventedObjects.imageFile(1, 1, 1));
        Path back = Files.write(
                root.resolve("back.dcm"),
                server.get(onlyInstance().path(), "application/dicom").body());
        byte[] printed = OutsideProgram.run(
                "/usr/bin/python3",
                "-c",
                "import pydicom, sys; d = pydicom.dcmread(sys.argv[1]);"
                        + " print(d.PatientName, d.Rows, int(d.pixel_array[2][3]))",
                back.toString());
        assertThat(new String(printed, StandardCharsets.UTF_8).strip()).isEqualTo("Invented^Person 1 8 24");
    }

    /** Where the only instance lies, as a search says. */
    private record Identity(String path, String transferSyntax) {}

    private Identity onlyInstance() throws IOException {
        JsonNode instance =
                new ObjectMapper().readTree(server.json("/instances").body()).get(0);
        String path = "/studies/" + instance.at("/0020000D/Value/0").asText() + "/series/"
                + instance.at("/0020000E/Value/0").asText() + "/instances/"
                + instance.at("/00080018/Value/0").asText();
        return new Identity(path, instance.at("/00083002/Value/0").asText());
    }

    private static List<String> frames(Path file) {
        byte[] printed = OutsideProgram.run(
                "/usr/bin/python3",
                "-c",
                "import hashlib, pydicom, sys; from pydicom.encaps import generate_pixel_data_frame as frames;"
                        + " d = pydicom.dcmread(sys.argv[1]);"
                        + " [print(hashlib.sha256(f).hexdigest())"
                        + " for f in frames(d.PixelData, int(d.get('NumberOfFrames', 1)))]",
                file.toString());
        return new String(printed, StandardCharsets.US_ASCII).lines().toList();
    }

    private static byte[] onlyPart(HttpResponse<byte[]> answer) {
        assertThat(answer.statusCode()).isEqualTo(200);
        String boundary =
                answer.headers().firstValue("Content-Type").orElseThrow().replaceAll(".*boundary=", "");
        String body = new String(answer.body(), StandardCharsets.ISO_8859_1);
        int start = body.indexOf("\r\n\r\n") + 4;
        int end = body.indexOf("\r\n--" + boundary, start);
        assertThat(body.substring(end)).isEqualTo("\r\n--" + boundary + "--\r\n");
        return body.substring(start, end).getBytes(StandardCharsets.ISO_8859_1);
    }

    private static List<String> texts(JsonNode array) {
        List<String> texts = new ArrayList<>();
        array.forEach(each -> texts.add(each.asText()));
        return texts;
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
