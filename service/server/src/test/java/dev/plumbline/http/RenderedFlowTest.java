// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.ScalelessFrame;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.net.http.HttpRequest;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RenderedFlowTest {
    private static OpenDoor door;

    @BeforeAll
    static void open() throws Exception {
        door = new OpenDoor();
        for (byte[] frame : new byte[][] {
            ScalelessFrame.PLAIN, ScalelessFrame.WITH_REGION, SampleBodies.PLANNED_FRAME, SampleBodies.NEEDLE_FRAME
        }) {
            assertThat(door.postDicom("/v1/frames", frame).status()).isEqualTo(201);
        }
    }

    @AfterAll
    static void close() throws Exception {
        door.close();
    }

    private static BufferedImage picture(OpenDoor.Answer answer) throws Exception {
        assertThat(answer.status()).as(answer.text()).isEqualTo(200);
        assertThat(answer.type()).isEqualTo("image/png");
        return ImageIO.read(new ByteArrayInputStream(answer.response().body()));
    }

    private static BufferedImage rendered(String uid, String query) throws Exception {
        return picture(door.get("/v1/frames/" + uid + "/1/rendered" + query));
    }

    private static int grey(BufferedImage image, int column, int row) {
        return image.getRaster().getSample(column, row, 0);
    }

    @Test
    void aWindowIsAppliedAlikeOnBothRoutes() throws Exception {
        // The frame's grey is column modulo 256; LINEAR over 100 +- 50 (PS3.3 C.11.2.1.2): (90 - 99.5) / 99 + 0.5.
        BufferedImage plain = rendered(ScalelessFrame.UID, "");
        BufferedImage windowed = rendered(ScalelessFrame.UID, "?windowCenter=100&windowWidth=100");
        assertThat(grey(plain, 90, 60)).isEqualTo(90);
        assertThat(grey(windowed, 90, 60)).isEqualTo(103);
        assertThat(grey(windowed, 30, 60)).isZero();
        assertThat(grey(windowed, 200, 60)).isEqualTo(255);
        BufferedImage wado = picture(door.send(door.request(ScalelessFrame.SERIES + "/instances/" + ScalelessFrame.UID
                        + "/frames/1/rendered?window=100,100,linear")
                .header("Accept", "image/png")
                .GET()));
        assertThat(wado.getRaster().getSamples(0, 0, 640, 480, 0, (int[]) null))
                .isEqualTo(windowed.getRaster().getSamples(0, 0, 640, 480, 0, (int[]) null));
    }

    @Test
    void aMaskBlanksWhatIsOutsideTheRegionsAndTheObjectStays() throws Exception {
        byte[] before = stored();
        BufferedImage masked = rendered(ScalelessFrame.REGION_UID, "?mask=outsideRegions");
        assertThat(grey(masked, 99, 60)).isZero();
        assertThat(grey(masked, 100, 60)).isEqualTo(100);
        assertThat(grey(masked, 150, 49)).isZero();
        assertThat(stored()).isEqualTo(before);
    }

    private static byte[] stored() throws Exception {
        return door.send(door.request(ScalelessFrame.SERIES + "/instances/" + ScalelessFrame.REGION_UID)
                        .header("Accept", "multipart/related; type=\"application/dicom\"; transfer-syntax=*;boundary=b")
                        .GET())
                .response()
                .body();
    }

    @Test
    void theScaleBarHasItsLength() throws Exception {
        // 0.1 mm per column: 1 cm is 100 white pixels, ending 16 from the region's right edge, 16 above its lower one.
        BufferedImage bar = rendered(ScalelessFrame.REGION_UID, "?scaleBar=true");
        int row = 449 - 16;
        assertThat(bar.getRGB(583 - 50, row) & 0xffffff).isEqualTo(0xffffff);
        int white = 0;
        for (int column = 440; column < 600; column++) {
            white += (bar.getRGB(column, row) & 0xffffff) == 0xffffff ? 1 : 0;
        }
        assertThat(white).isBetween(99, 103);
        BufferedImage stated = rendered(ScalelessFrame.UID, "?scaleBar=true&scale=600,40,600,440,50");
        assertThat(stated.getWidth()).isEqualTo(640);
    }

    @Test
    void theRegionsAreDrawn() throws Exception {
        BufferedImage regions = rendered(ScalelessFrame.REGION_UID, "?regions=true");
        assertThat(regions.getRGB(101, 250) & 0xffffff).isEqualTo(0x00c8ff);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "windowCenter=100",
                "windowCenter=100&windowWidth=0",
                "windowCenter=x&windowWidth=5",
                "mask=everything",
                "scaleBar=yes",
                "scaleBar=true",
                "mask=outsideRegions",
                "regions=1",
            })
    void refusesWithTheRemedyWhatCannotBeShown(String query) throws Exception {
        OpenDoor.Answer answer = door.get("/v1/frames/" + ScalelessFrame.UID + "/1/rendered?" + query);
        assertThat(answer.status()).as(answer.text()).isEqualTo(422);
        assertThat(answer.json().path("remedy").asText()).isNotBlank();
    }

    private static OpenDoor.Answer drawn(String path, String accept, String body) throws Exception {
        return door.send(door.request(path)
                .header("Content-Type", "application/json")
                .header("Accept", accept)
                .POST(HttpRequest.BodyPublishers.ofString(body)));
    }

    @Test
    void plansAndComparisonsAreDrawnOnRequest() throws Exception {
        for (String path : new String[] {"/v1/plans", "/v1/comparisons"}) {
            OpenDoor.Answer svg = drawn(path, "image/svg+xml", SampleBodies.CASE);
            assertThat(svg.status()).as(svg.text()).isEqualTo(200);
            assertThat(svg.type()).startsWith("image/svg+xml");
            assertThat(svg.header("Vary")).contains("Accept");
            assertThat(svg.text()).contains("<svg", "data:image/png;base64,", "</svg>");
            BufferedImage png = picture(drawn(path, "image/png", SampleBodies.CASE));
            assertThat(png.getWidth()).isGreaterThan(640);
        }
        assertThat(drawn("/v1/plans", "image/svg+xml", SampleBodies.CASE).text())
                .isNotEqualTo(drawn("/v1/comparisons", "image/svg+xml", SampleBodies.CASE)
                        .text());
    }

    @Test
    void jsonIsTheAnswerUnlessAPictureIsWantedMore() throws Exception {
        for (String accept : new String[] {"*/*", "application/json, image/png", "image/png;q=0.5, application/json"}) {
            assertThat(drawn("/v1/plans", accept, SampleBodies.CASE).type())
                    .as(accept)
                    .isEqualTo("application/json");
        }
        assertThat(drawn("/v1/plans", "text/csv", SampleBodies.CASE).status()).isEqualTo(406);
    }

    @Test
    void anObservationIsNamedByItsId() throws Exception {
        assertThat(drawn("/v1/comparisons?observation=obs-1", "image/svg+xml", SampleBodies.CASE)
                        .text())
                .isEqualTo(drawn("/v1/comparisons", "image/svg+xml", SampleBodies.CASE)
                        .text());
        assertThat(drawn("/v1/comparisons?observation=none", "image/svg+xml", SampleBodies.CASE)
                        .status())
                .isEqualTo(422);
    }
}
