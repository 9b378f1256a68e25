// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.document.StrictJson;
import dev.plumbline.record.Cautions;
import java.net.http.HttpRequest;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Plans, comparisons and what is refused, through a real socket. */
class PlanFlowTest {
    private static OpenDoor door;

    /** Depth 30 below a level skin line, 0.1 mm per pixel. */
    private static final String CASE = """
            {"schema":"plumbline-case/1","approach":"inPlane",
             "frame":{"columns":800,"rows":640,"mmPerColumn":0.1,"mmPerRow":0.1},
             "probe":{"kind":"linear","footprintMm":38,"midpoint":{"column":400,"row":40},"needleSide":"right"},
             "marks":{"target":{"column":400,"row":340},"skin":[{"column":210,"row":40},{"column":590,"row":40}]},
             "needle":{"gauge":22,"lengthMm":80},
             "intent":{"entryDistanceMm":45},
             "observations":[{"id":"seen","phase":"finalTip","shaft":[{"column":590,"row":213.33},{"column":420,"row":326.67}],
                "tip":{"column":400,"row":340},"tipIsTip":true}]}""";

    @BeforeAll
    static void open() throws Exception {
        door = new OpenDoor();
    }

    @AfterAll
    static void close() throws Exception {
        door.close();
    }

    private static OpenDoor.Answer refused(OpenDoor.Answer answer, int status, String slug, String pointer)
            throws Exception {
        JsonNode problem = answer.json();
        assertThat(answer.status()).as(answer.text()).isEqualTo(status);
        assertThat(answer.type()).isEqualTo("application/problem+json");
        assertThat(problem.path("type").asText()).isEqualTo("urn:plumbline:problem:" + slug);
        assertThat(problem.path("status").asInt()).isEqualTo(status);
        assertThat(problem.path("title").asText()).isNotBlank();
        assertThat(problem.path("detail").asText()).isNotBlank();
        assertThat(problem.path("remedy").asText()).isNotBlank();
        assertThat(problem.path("pointer").asText("none")).isEqualTo(pointer);
        assertThat(answer.text())
                .doesNotContain("Exception")
                .doesNotContain("\\tat ")
                .doesNotContain(".java");
        return answer;
    }

    @Test
    void aPlanHasTheWorkedValues() throws Exception {
        OpenDoor.Answer answer = door.post("/v1/plans", CASE);
        assertThat(answer.status()).as(answer.text()).isEqualTo(200);
        assertThat(answer.type()).isEqualTo("application/json");
        JsonNode plan = answer.json().path("plan");
        // Plain trigonometry: atan(30/45), hypot(30, 45), (45 - 19)/cos, 26 tan.
        assertThat(value(plan, "angleToSkinDeg")).isCloseTo(33.690, within(0.0005));
        assertThat(value(plan, "pathMm")).isCloseTo(54.083, within(0.0005));
        assertThat(value(plan, "leadInMm")).isCloseTo(31.248, within(0.0005));
        assertThat(value(plan, "firstSeenDepthMm")).isCloseTo(17.333, within(0.0005));
        assertThat(value(plan, "entryFromProbeEdgeMm")).isCloseTo(26, within(0.0005));
        assertThat(plan.path("feasible").booleanValue()).isTrue();
        assertThat(plan.path("source").asText()).isEqualTo("stated");
        assertThat(answer.json().path("cautions").get(0).asText()).isEqualTo(Cautions.text());
    }

    private static double value(JsonNode answer, String field) {
        assertThat(answer.path(field).path("value").isNumber()).as(field).isTrue();
        assertThat(answer.path(field).path("expandedUncertainty").isNumber())
                .as(field)
                .isTrue();
        return answer.path(field).path("value").doubleValue();
    }

    @Test
    void aComparisonHasPlanObservationAndDeviation() throws Exception {
        JsonNode answer = door.post("/v1/comparisons", CASE).json();
        assertThat(value(answer.path("plan"), "angleToSkinDeg")).isCloseTo(33.690, within(0.0005));
        JsonNode observation = answer.path("observations").get(0);
        assertThat(observation.path("id").asText()).isEqualTo("seen");
        assertThat(value(observation, "tipDepthMm")).isCloseTo(30, within(0.01));
        JsonNode deviation = answer.path("deviations").get(0);
        assertThat(deviation.path("id").asText()).isEqualTo("seen");
        assertThat(value(deviation, "angleToSkinDeg")).isCloseTo(0, within(0.05));
        assertThat(deviation.path("angleToSkinDeg").path("exceedsUncertainty").isBoolean())
                .isTrue();
        assertThat(answer.path("cautions").get(0).asText()).isEqualTo(Cautions.text());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"row\":340},\"skin\"|\"row\":20},\"skin\"|/marks/target",
                "\"row\":340},\"skin\"|\"row\":NaN},\"skin\"|/marks/target/row",
                "\"row\":340},\"skin\"|\"row\":\"340\"},\"skin\"|/marks/target/row",
                "\"row\":340},\"skin\"|\"row\":1e999},\"skin\"|/marks/target/row",
                "\"row\":340},\"skin\"|\"row\":900},\"skin\"|/marks/target",
                "{\"entryDistanceMm\":45}|{\"entryDistanceMm\":45,\"angleToSkinDeg\":30}|/intent",
                "\"needle\"|\"neele\"|/neele",
            })
    void refusesBadInputAndNamesTheField(String instead, String of, String pointer) throws Exception {
        OpenDoor.Answer answer = door.post("/v1/plans", CASE.replace(instead, of));
        assertThat(answer.status()).as(answer.text()).isEqualTo(422);
        refused(answer, 422, answer.json().path("type").asText().replace("urn:plumbline:problem:", ""), pointer);
    }

    @Test
    void refusesCoincidentShaftPoints() throws Exception {
        String json = CASE.replace("{\"column\":590,\"row\":213.33}", "{\"column\":421,\"row\":326.67}");
        refused(door.post("/v1/comparisons", json), 422, "marks-coincide", "/observations/0/shaft");
    }

    @Test
    void refusesBothSides() throws Exception {
        String json = CASE.replace("\"needle\":", "\"context\":{\"laterality\":\"bilateral\"},\"needle\":");
        OpenDoor.Answer answer =
                refused(door.post("/v1/comparisons", json), 422, "invalid-value", "/context/laterality");
        assertThat(answer.json().path("remedy").asText()).contains("two cases");
    }

    @Test
    void refusesAFileNameOverHttp() throws Exception {
        String json = CASE.replaceFirst("\\{\"columns\"[^}]*}", "{\"file\":\"/etc/passwd\"}");
        OpenDoor.Answer answer = refused(door.post("/v1/plans", json), 422, "invalid-value", "/frame/file");
        assertThat(answer.json().path("remedy").asText()).contains("POST /v1/frames");
        assertThat(answer.text()).doesNotContain("passwd");
    }

    @Test
    void namesTheNearestKnownField() throws Exception {
        OpenDoor.Answer answer = refused(
                door.post("/v1/plans", CASE.replace("footprintMm", "footprint")),
                422,
                "unknown-field",
                "/probe/footprint");
        assertThat(answer.json().path("remedy").asText()).contains("footprintMm");
    }

    @Test
    void refusesAnUnknownSchemaVersion() throws Exception {
        refused(door.post("/v1/plans", CASE.replace("case/1", "case/9")), 400, "unreadable-document", "/schema");
    }

    @Test
    void refusesAFrameThatIsNotHeld() throws Exception {
        String json = CASE.replaceFirst("\\{\"columns\"[^}]*}", "{\"sopInstanceUid\":\"1.2.3\"}");
        refused(door.post("/v1/plans", json), 404, "not-held", "/frame");
        refused(door.get("/v1/frames/1.2.3/1/rendered"), 404, "not-held", "");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "[]", "nonsense", "{} x"})
    void refusesWhatIsNoCaseDocument(String body) throws Exception {
        refused(door.post("/v1/plans", body), 400, "unreadable-document", "");
    }

    @Test
    void refusesABodyThatIsTooLarge() throws Exception {
        String large = CASE + " ".repeat(StrictJson.LIMIT_BYTES);
        refused(door.post("/v1/plans", large), 413, "too-large", "");
    }

    @Test
    void refusesABodyOfUnstatedLengthThatIsTooLarge() throws Exception {
        byte[] large = (CASE + " ".repeat(StrictJson.LIMIT_BYTES)).getBytes(java.nio.charset.StandardCharsets.UTF_8);
        OpenDoor.Answer answer = door.send(door.request("/v1/plans")
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofInputStream(() -> new java.io.ByteArrayInputStream(large))));
        refused(answer, 413, "too-large", "");
    }

    @ParameterizedTest
    @ValueSource(strings = {"text/plain", "application/xml", "application/x-www-form-urlencoded"})
    void refusesAnotherMediaType(String type) throws Exception {
        OpenDoor.Answer answer = door.send(
                door.request("/v1/plans").header("Content-Type", type).POST(HttpRequest.BodyPublishers.ofString(CASE)));
        refused(answer, 415, "media-type-not-taken", "");
    }

    @Test
    void refusesACompressedBody() throws Exception {
        OpenDoor.Answer answer = door.send(door.request("/v1/plans")
                .header("Content-Type", "application/json")
                .header("Content-Encoding", "gzip")
                .POST(HttpRequest.BodyPublishers.ofString(CASE)));
        refused(answer, 415, "media-type-not-taken", "");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/v2/plans", "/v1", "/v1/plans/", "/v1//plans", "/nothing", "/v1/records/1/2/3"})
    void refusesAnUnknownRoute(String path) throws Exception {
        refused(door.get(path), 404, "unknown-route", "");
    }

    @Test
    void refusesAnotherMethod() throws Exception {
        refused(door.get("/v1/plans"), 405, "method-not-allowed", "");
        refused(door.send(door.request("/v1/plans").DELETE()), 405, "method-not-allowed", "");
    }

    @Test
    void ourOwnFaultTellsNothingButItsNumber() throws Exception {
        try (OpenDoor broken = new OpenDoor()) {
            broken.rooms.breakStore();
            OpenDoor.Answer answer = refused(broken.post("/v1/cases", CASE), 500, "our-fault", "");
            assertThat(answer.json().path("incident").asText()).isEqualTo("incident-7");
            assertThat(answer.text()).doesNotContainIgnoringCase("sql");
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "GET /..%2f..%2fetc/passwd HTTP/1.1",
                "GET /v1/%c0%ae%c0%ae/x HTTP/1.1",
                "GET /v1;x=/plans HTTP/1.1",
                "NONSENSE",
                "GET /v1/%zz HTTP/1.1",
                "GET / HTTP/9.9",
            })
    void answersHostileRequestsInTheSameForm(String line) throws Exception {
        String answer = door.raw(line + "\r\nHost: localhost\r\nConnection: close\r\n\r\n");
        assertThat(answer)
                .containsPattern("^HTTP/1\\.1 (4\\d\\d|505) ")
                .containsIgnoringCase("content-type: application/problem+json");
        assertThat(answer)
                .contains("urn:plumbline:problem:")
                .doesNotContain("<html")
                .doesNotContain("Exception");
        assertThat(answer).doesNotContainIgnoringCase("Jetty").doesNotContain("Javalin");
    }

    @Test
    void answersAreNotToBeKeptOrGuessedAt() throws Exception {
        OpenDoor.Answer answer = door.get("/");
        assertThat(answer.header("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(answer.header("Cache-Control")).isEqualTo("no-store");
        assertThat(answer.header("Server")).isEmpty();
    }

    @Test
    void theRootSaysWhatItIsAndCautions() throws Exception {
        JsonNode root = door.get("/").json();
        assertThat(root.path("name").asText()).isEqualTo("Plumbline");
        assertThat(root.path("version").asText()).isEqualTo("0.0-test");
        assertThat(root.path("cautions").get(0).asText()).isEqualTo(Cautions.text());
        assertThat(door.get("/health/live").json().path("status").asText()).isEqualTo("live");
        assertThat(door.get("/health/ready").json().path("status").asText()).isEqualTo("ready");
    }
}
