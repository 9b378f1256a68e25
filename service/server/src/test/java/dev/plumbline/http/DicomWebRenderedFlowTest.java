// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static dev.plumbline.archive.InventedObjects.imageFile;
import static dev.plumbline.archive.InventedObjects.instanceUid;
import static dev.plumbline.archive.InventedObjects.seriesUid;
import static dev.plumbline.archive.InventedObjects.studyUid;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.archive.InventedObjects;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Pictures over DICOMweb. Source: DICOM PS3.18 8.3.5 and 10.4. */
class DicomWebRenderedFlowTest {
    private static final String INSTANCE =
            "/studies/" + studyUid(1) + "/series/" + seriesUid(1, 1) + "/instances/" + instanceUid(1, 1, 1);

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

    @ParameterizedTest
    @ValueSource(strings = {"image/jpeg", "image/png", "image/gif"})
    void rendersEachTypeThatTheStandardAsksFor(String type) throws IOException {
        server.stow(imageFile(1, 1, 1));
        for (String below : List.of("/rendered", "/frames/1/rendered", "/thumbnail", "/frames/1/thumbnail")) {
            HttpResponse<byte[]> answer = server.get(INSTANCE + below, type);
            assertThat(answer.headers().firstValue("Content-Type")).contains(type);
            BufferedImage picture = ImageIO.read(new ByteArrayInputStream(answer.body()));
            assertThat(picture.getWidth()).isEqualTo(InventedObjects.COLUMNS);
            assertThat(picture.getHeight()).isEqualTo(InventedObjects.ROWS);
        }
    }

    @Test
    void rendersEveryImageOfASeriesOrStudyAsParts() throws IOException {
        server.stow(imageFile(1, 1, 1), imageFile(1, 1, 2), imageFile(1, 2, 1));
        String study = "/studies/" + studyUid(1);
        String jpegs = "multipart/related; type=\"image/jpeg\"";
        assertThat(pictures(server.get(study + "/rendered", jpegs))).isEqualTo(3);
        assertThat(pictures(server.get(study + "/series/" + seriesUid(1, 1) + "/rendered", jpegs)))
                .isEqualTo(2);
        assertThat(server.get(study + "/rendered", "image/jpeg").statusCode()).isEqualTo(406);
    }

    private static long pictures(HttpResponse<byte[]> answer) {
        assertThat(answer.statusCode()).isEqualTo(200);
        return new String(answer.body(), StandardCharsets.ISO_8859_1)
                .lines()
                .filter(line -> line.equalsIgnoreCase("Content-Type: image/jpeg"))
                .count();
    }

    /** The viewport's part of the image, with the ratio of its sides. Source: DICOM PS3.18 8.3.5.1.3. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "viewport=100,100|whole",
                "viewport=100,100,0,0,4,4|part",
                "viewport=100,100,,,4,4|part",
                "viewport=100,100,4,4,-4,4|turned"
            })
    void rendersTheViewport(String query, String what) throws IOException {
        server.stow(imageFile(1, 1, 1));
        BufferedImage picture = picture(query);
        double ratio = what.equals("whole") ? InventedObjects.COLUMNS / (double) InventedObjects.ROWS : 1;
        assertThat(picture.getWidth() / (double) picture.getHeight()).isCloseTo(ratio, within(0.03));
        assertThat(Math.max(picture.getWidth(), picture.getHeight())).isEqualTo(100);
    }

    /** A part that comes out as large as the image is still that part. */
    @Test
    void rendersAPartThatIsMadeAsLargeAsTheImage() throws IOException {
        server.stow(imageFile(1, 1, 1));
        String size = InventedObjects.COLUMNS + "," + InventedObjects.ROWS;
        BufferedImage whole = picture("viewport=" + size);
        BufferedImage part =
                picture("viewport=" + size + ",0,0," + InventedObjects.COLUMNS / 2 + "," + InventedObjects.ROWS / 2);
        assertThat(part.getWidth()).isEqualTo(whole.getWidth());
        assertThat(part.getHeight()).isEqualTo(whole.getHeight());
        assertThat(lastGrey(part)).isLessThan(lastGrey(whole));
    }

    private BufferedImage picture(String query) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(
                server.get(INSTANCE + "/rendered?" + query, "image/png").body()));
    }

    private static int lastGrey(BufferedImage picture) {
        return picture.getRaster().getSample(picture.getWidth() - 1, picture.getHeight() - 1, 0);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "viewport=100",
                "viewport=0,10",
                "viewport=9999,10",
                "viewport=10,10,900,900,4,4",
                "viewport=10,10,123456",
                "viewport=10,10,1,1,1,1,1",
                "viewport=10,10,0,0,0,0",
                "quality=0",
                "quality=101",
                "quality=fine",
                "iccprofile=ours"
            })
    void refusesARenderingThatCannotBeRead(String query) {
        server.stow(imageFile(1, 1, 1));
        assertThat(server.get(INSTANCE + "/rendered?" + query, "image/png").statusCode())
                .isEqualTo(400);
    }

    @Test
    void anAnnotationIsWrittenOnThePictureOnlyAndWhatIsNoneIsWarnedOf() {
        server.stow(imageFile(1, 1, 1));
        String large = INSTANCE + "/rendered?viewport=400,400";
        byte[] plain = server.get(large, "image/png").body();
        assertThat(server.get(large + "&annotation=patient,technique", "image/png")
                        .body())
                .isNotEqualTo(plain);
        assertThat(server.get(large, "image/png").body()).isEqualTo(plain);
        assertThat(server.get(large + "&annotation=weather", "image/png")
                        .headers()
                        .firstValue("Warning")
                        .orElseThrow())
                .contains("299")
                .contains("weather");
    }
}
