// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.ForeignMarks;
import dev.plumbline.UnfitFrames;
import java.net.http.HttpRequest;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Marks written by other software (pydicom, Debian's python3-pydicom) come in and become a case, through a real socket.
 */
class MarkIntakeFlowTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static final String TARGET = """
            {"label":"Target","type":"POINT","points":[320,300,340,280],"concept":["111010","DCM","label"],"unit":"1"}""";
    private static final String SKIN = """
            {"label":"skin","type":"POLYLINE","points":[60,40,580,40],"value":1,"unit":"mm"}""";
    private static final String SHAFT = """
            {"label":"needle shaft","type":"POLYLINE","points":[560,120,380,252]}""";
    private static final String TIP = """
            {"label":"tip","type":"POINT","points":[380,252]}""";
    private static final String ARTERY = """
            {"label":"artery","type":"CIRCLE","points":[200,300,230,300]}""";

    @TempDir
    private Path folder;

    private OpenDoor door;
    private Path planned;
    private Path needle;

    @BeforeEach
    void framesAreHeld() throws Exception {
        door = new OpenDoor();
        planned = Files.write(folder.resolve("planned.dcm"), SampleBodies.PLANNED_FRAME);
        needle = Files.write(folder.resolve("needle.dcm"), SampleBodies.NEEDLE_FRAME);
        assertThat(door.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME).status())
                .isEqualTo(201);
        assertThat(door.postDicom("/v1/frames", SampleBodies.NEEDLE_FRAME).status())
                .isEqualTo(201);
    }

    @AfterEach
    void close() throws Exception {
        door.close();
    }

    private byte[] written(Path frame, String more, String... marks) throws Exception {
        return Files.readAllBytes(ForeignMarks.write(folder, frame, more, marks));
    }

    private JsonNode sent(byte[] object) throws Exception {
        OpenDoor.Answer answer = door.postDicom("/v1/marks", object);
        assertThat(answer.status()).as(answer.text()).isIn(200, 201);
        return answer.json();
    }

    private JsonNode held(JsonNode account) throws Exception {
        return door.get("/v1/cases/" + account.path("caseId").asText()).json();
    }

    private static List<String> texts(JsonNode array, String field) {
        List<String> texts = new ArrayList<>();
        array.forEach(item -> texts.add(item.path(field).asText()));
        return texts;
    }

    @Test
    void aDrawnTargetOpensACaseThatSaysWhatItLacks() throws Exception {
        JsonNode account = sent(written(planned, "", TARGET, SKIN, ARTERY));
        assertThat(texts(account.path("placed"), "means")).containsExactly("target", "skin", "hazard");
        JsonNode document = held(account);
        assertThat(document.path("frame").path("sopInstanceUid").asText()).isEqualTo(SampleBodies.PLANNED_UID);
        assertThat(document.path("marks").path("target").path("column").asDouble())
                .isEqualTo(320);
        assertThat(document.path("marks").path("target").path("row").asDouble()).isEqualTo(300);
        assertThat(document.path("marks").path("skin")).hasSize(2);
        assertThat(document.path("marks").path("hazards").path(0).path("kind").asText())
                .isEqualTo("artery");
        assertThat(texts(account.path("lacks"), "field"))
                .contains("/approach", "/observations", "/needle/lengthMm", "/probe/midpoint", "/intent")
                .doesNotContain("/marks/skin");
        account.path("lacks")
                .forEach(lack -> assertThat(lack.path("text").asText()).endsWith("."));
    }

    @Test
    void aNeedleDrawnLaterCompletesTheCaseAndItsNumbersAreOurs() throws Exception {
        String caseId = sent(written(planned, "", TARGET, SKIN)).path("caseId").asText();
        JsonNode account = sent(written(needle, "", SHAFT));
        assertThat(account.path("caseId").asText()).isEqualTo(caseId);
        JsonNode document = held(account);
        assertThat(document.path("observations")).hasSize(1);
        assertThat(document.path("observations").path(0).path("shaft")).hasSize(2);
        assertThat(texts(account.path("lacks"), "field")).doesNotContain("/observations");
        document = sayInPlane(account);
        assertThat(texts(account.path("remarks"), "text"))
                .as("the lines say 1 mm")
                .anyMatch(text -> text.contains("1.00 mm") && text.contains("The points count"));
        OpenDoor.Answer compared = door.post("/v1/comparisons", document.toString());
        assertThat(compared.status()).as(compared.text()).isEqualTo(200);
        assertThat(compared.json()
                        .path("observations")
                        .path(0)
                        .path("angleToSkinDeg")
                        .path("value")
                        .isNumber())
                .isTrue();
    }

    @Test
    void whatACaseLacksCanBeSaidUntilItIsRecorded() throws Exception {
        JsonNode account = sent(written(planned, "", TARGET, SKIN, SHAFT));
        String at = "/v1/cases/" + account.path("caseId").asText();
        sayInPlane(account);
        set(
                at + "/probe",
                "{\"kind\":\"linear\",\"footprintMm\":38,\"needleSide\":\"right\",\"midpoint\":{\"column\":320,\"row\":40}}");
        set(at + "/needle", "{\"gauge\":22,\"lengthMm\":80}");
        set(at + "/intent", "{\"entryDistanceMm\":30}");
        set(at + "/context", "{\"block\":\"femoralNerve\",\"laterality\":\"right\"}");
        JsonNode complete = door.get(
                        "/v1/studies/" + account.path("studyInstanceUid").asText() + "/marks")
                .json();
        assertThat(complete.path("lacks")).isEmpty();
        OpenDoor.Answer draft = door.post("/v1/records", "{\"caseId\":" + account.path("caseId") + "}");
        assertThat(draft.status()).as(draft.text()).isEqualTo(201);
        String record = "/v1/records/" + draft.json().path("recordUid").asText();
        OpenDoor.Answer signed = door.post(
                record + "/sign",
                "{\"signature\":{\"name\":\"Sample^Signer\",\"organization\":\"Sample Hospital\",\"time\":\"2026-01-05T10:15:00+01:00\"}}");
        assertThat(signed.status()).as(signed.text()).isEqualTo(201);
        assertThat(signed.json().path("state").asText()).isEqualTo("signed");
        assertThat(door.postDicom("/v1/marks", written(planned, "", ARTERY))
                        .json()
                        .path("questions")
                        .toString())
                .contains("amendment");
    }

    private JsonNode sayInPlane(JsonNode account) throws Exception {
        set("/v1/cases/" + account.path("caseId").asText() + "/approach", "{\"approach\":\"inPlane\"}");
        return held(account);
    }

    @Test
    void marksDoNotTellTheApproachAndItIsNotGuessed() throws Exception {
        JsonNode account = sent(written(planned, "", TARGET, SKIN, SHAFT));
        assertThat(held(account).has("approach")).isFalse();
        assertThat(account.path("lacks").path(0).path("field").asText()).isEqualTo("/approach");
        String at = "/v1/cases/" + account.path("caseId").asText();
        for (OpenDoor.Answer refused : List.of(
                door.post("/v1/plans", held(account).toString()),
                door.post("/v1/comparisons", held(account).toString()),
                door.post("/v1/records", "{\"caseId\":" + account.path("caseId") + "}"),
                posted(at + "/intent", "{\"entryDistanceMm\":30}"))) {
            assertThat(refused.status()).as(refused.text()).isEqualTo(422);
            assertThat(refused.json().path("pointer").asText()).isEqualTo("/approach");
            assertThat(refused.json().path("remedy").asText()).contains("/approach");
        }
        assertThat(posted(at + "/approach", "{\"approach\":\"inPlan\"}").status())
                .isEqualTo(422);
        assertThat(posted(at + "/approach", "{\"way\":\"inPlane\"}").status()).isEqualTo(422);
        assertThat(posted(at + "/approach", "{\"approach\":\"outOfPlane\"}").status())
                .isEqualTo(201);
        JsonNode later = sent(written(planned, "", ARTERY));
        assertThat(held(later).path("approach").asText())
                .as("what a person said stands")
                .isEqualTo("outOfPlane");
        assertThat(texts(later.path("lacks"), "field")).doesNotContain("/approach");
    }

    @Test
    void aFrameThatTellsNoScaleIsNamedAndAPersonStatesIt() throws Exception {
        Path frame = Files.write(folder.resolve("unscaled.dcm"), UnfitFrames.withoutScale());
        assertThat(door.postDicom("/v1/frames", UnfitFrames.withoutScale()).status())
                .isEqualTo(201);
        JsonNode account = sent(written(
                frame,
                "",
                TARGET.replace("320,300,340,280", "200,150"),
                SHAFT.replace("560,120,380,252", "300,60,220,130")));
        assertThat(texts(account.path("lacks"), "field")).contains("/frame/scale");
        String at = "/v1/cases/" + account.path("caseId").asText();
        JsonNode document = sayInPlane(account);
        OpenDoor.Answer untold = door.post("/v1/comparisons", document.toString());
        assertThat(untold.status()).isEqualTo(422);
        assertThat(untold.json().path("type").asText()).contains("calibrated");

        ObjectNode scaled = document.path("frame").deepCopy();
        scaled.putObject("scale").put("distanceMm", 20).<ObjectNode>setAll((ObjectNode)
                MAPPER.readTree("{\"from\":{\"column\":390,\"row\":20},\"to\":{\"column\":390,\"row\":220}}"));
        ObjectNode other = scaled.deepCopy().put("sopInstanceUid", SampleBodies.PLANNED_UID);
        assertThat(posted(at + "/frame", other.toString()).status())
                .as("the marks are on another picture")
                .isEqualTo(409);
        set(at + "/frame", scaled.toString());
        JsonNode later = sent(written(frame, "", TARGET.replace("320,300,340,280", "200,150")));
        assertThat(texts(later.path("lacks"), "field")).doesNotContain("/frame/scale");
        OpenDoor.Answer told = door.post("/v1/comparisons", held(later).toString());
        assertThat(told.status()).as(told.text()).isEqualTo(200);
    }

    @Test
    void whetherADrawnTipIsTheTipIsSaidByAPersonOfThatPointOnly() throws Exception {
        String first = "\"uid\":\"2.25.1001\",";
        JsonNode account = sent(written(needle, first, TARGET, SKIN, SHAFT, TIP));
        assertThat(texts(account.path("lacks"), "field")).contains("/observations/0/tipIsTip");
        String observation =
                held(account).path("observations").path(0).path("id").asText();
        String at = "/v1/cases/" + account.path("caseId").asText() + "/observations/" + observation;
        assertThat(door.post(at, "{\"tipIsTip\":true}").status()).isEqualTo(428);
        OpenDoor.Answer misspelt = posted(at, "{\"tipIsTop\":true}");
        assertThat(misspelt.status()).isEqualTo(422);
        assertThat(misspelt.json().path("remedy").asText()).contains("tipIsTip");
        assertThat(posted(at, "{}").status()).isEqualTo(422);
        assertThat(posted(at, "{\"tipIsTip\":\"perhaps\"}").status()).isEqualTo(422);
        assertThat(posted(at + "x", "{\"tipIsTip\":true}").status()).isEqualTo(404);

        set(at, "{\"tipIsTip\":true,\"phase\":\"finalTip\"}");
        assertThat(posted(at, "{\"tipIsTip\":true}").status())
                .as("said already")
                .isEqualTo(200);
        JsonNode compared =
                door.post("/v1/comparisons", sayInPlane(account).toString()).json();
        assertThat(compared.at("/observations/0/tipDepthMm/value").isNumber())
                .as(compared.toString())
                .isTrue();

        JsonNode again = sent(written(needle, "", SHAFT));
        assertThat(held(again).at("/observations/0/tipIsTip").asBoolean())
                .as("the same tip drawn again")
                .isTrue();
        JsonNode moved =
                sent(written(needle, "\"predecessor\":\"2.25.1001\",", SHAFT, TIP.replace("380,252", "390,245")));
        assertThat(held(moved).at("/observations/0/tip/column").asDouble()).isEqualTo(390);
        assertThat(held(moved).at("/observations/0").has("tipIsTip"))
                .as("another point, of which nobody has said it")
                .isFalse();
        assertThat(held(moved).at("/observations/0/phase").asText()).isEqualTo("finalTip");
        assertThat(texts(moved.path("lacks"), "field")).contains("/observations/0/tipIsTip");
    }

    private OpenDoor.Answer posted(String path, String part) throws Exception {
        return door.send(door.request(path)
                .header("Content-Type", "application/json")
                .header("If-Match", "*")
                .POST(HttpRequest.BodyPublishers.ofString(part)));
    }

    private void set(String path, String part) throws Exception {
        OpenDoor.Answer answer = posted(path, part);
        assertThat(answer.status()).as(answer.text()).isEqualTo(201);
    }

    @Test
    void theSameReportAgainAndThroughAnotherDoorChangesNothing() throws Exception {
        byte[] report = written(planned, "", TARGET, SKIN, ARTERY);
        JsonNode first = sent(report);
        JsonNode before = held(first);
        assertThat(door.postDicom("/v1/marks", report).status()).isEqualTo(200);
        assertThat(door.postDicom("/dicomweb/studies", report).status()).isEqualTo(200);
        assertThat(held(first)).isEqualTo(before);
        assertThat(door.post("/v1/studies/" + first.path("studyInstanceUid").asText() + "/marks", "{}")
                        .json())
                .isEqualTo(first);
    }

    @Test
    void anAmendedReportMovesWhatItDrawsAgainAndDropsNothing() throws Exception {
        byte[] first = written(planned, "\"uid\":\"2.25.1001\",", TARGET, SKIN, ARTERY, SHAFT);
        sent(first);
        String moved = TARGET.replace("320,300", "330,310");
        JsonNode account =
                sent(written(planned, "\"predecessor\":\"2.25.1001\",", moved, SKIN, SHAFT.replace("560", "550")));
        JsonNode document = held(account);
        assertThat(document.path("marks").path("target").path("column").asDouble())
                .isEqualTo(330);
        assertThat(document.path("marks").path("hazards")).hasSize(1);
        assertThat(document.path("observations")).hasSize(1);
        assertThat(document.path("observations")
                        .path(0)
                        .path("shaft")
                        .path(0)
                        .path("column")
                        .asDouble())
                .isEqualTo(550);
        assertThat(texts(account.path("remarks"), "text")).anyMatch(text -> text.contains("no deletion"));
        assertThat(account.path("questions")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"grey", "colour"})
    void aPresentationStateDoesAsWell(String kind) throws Exception {
        JsonNode account = sent(written(
                planned,
                "\"kind\":\"" + kind + "\",",
                "{\"label\":\"target\",\"type\":\"POINT\",\"points\":[320,300]}",
                "{\"label\":\"skin\",\"type\":\"POLYLINE\",\"points\":[60,40,300,41,580,40]}",
                "{\"type\":\"POLYLINE\",\"points\":[1,1,9,9]}"));
        assertThat(texts(account.path("placed"), "means")).containsExactly("target", "skin");
        assertThat(account.path("unmatched")).hasSize(1);
        assertThat(held(account).path("marks").path("skin")).hasSize(3);
    }

    @Test
    void coordinatesByReferenceAreFound() throws Exception {
        JsonNode account = sent(written(planned, "", TARGET.replace("{", "{\"byReference\":true,"), SKIN));
        assertThat(texts(account.path("placed"), "means")).containsExactly("target", "skin");
    }

    @Test
    void unmatchedMarksAreListedWithTheirLabels() throws Exception {
        JsonNode account = sent(written(planned, "", SHAFT.replace("needle shaft", "something else"), TARGET));
        JsonNode unmatched = account.path("unmatched").path(0);
        assertThat(unmatched.path("drawnAs").asText()).isEqualTo("a line");
        assertThat(unmatched.path("labels").toString())
                .contains("something else")
                .contains("Tools@^0.1.0:Length");
        assertThat(held(account).path("observations")).isEmpty();
    }

    @Test
    void aTargetThatAPersonSetOtherwiseStands() throws Exception {
        ObjectNode own =
                MAPPER.createObjectNode().put("schema", "plumbline-case/1").put("caseId", "own-1");
        own.put("approach", "inPlane")
                .putObject("frame")
                .put("sopInstanceUid", SampleBodies.PLANNED_UID)
                .put("frameNumber", 1);
        own.putObject("marks").putObject("target").put("column", 100).put("row", 200);
        assertThat(door.post("/v1/cases", own.toString()).status()).isEqualTo(201);
        for (String skin : List.of(SKIN, SKIN.replace("60,40", "60,45"))) {
            JsonNode account = sent(written(planned, "", TARGET, SKIN.equals(skin) ? ARTERY : SHAFT, skin));
            assertThat(account.path("caseId").asText()).isEqualTo("own-1");
            assertThat(texts(account.path("questions"), "text")).anyMatch(text -> text.startsWith("Which target?"));
            JsonNode marks = held(account).path("marks");
            assertThat(marks.path("target").path("column").asDouble()).isEqualTo(100);
            assertThat(marks.path("skin").path(0).path("row").asDouble())
                    .as("what was absent is taken, and then stands")
                    .isEqualTo(40);
            assertThat(marks.path("hazards")).hasSize(1);
        }
    }

    @Test
    void aPersonsCorrectionOfADrawnTargetStandsWhateverComesLater() throws Exception {
        JsonNode account = sent(written(planned, "", TARGET, SKIN));
        set(
                "/v1/cases/" + account.path("caseId").asText() + "/marks",
                "{\"target\":{\"column\":300,\"row\":290},\"skin\":[{\"column\":60,\"row\":42},{\"column\":580,\"row\":40}]}");
        JsonNode later = sent(written(planned, "", ARTERY));
        JsonNode marks = held(later).path("marks");
        assertThat(marks.path("target").path("column").asDouble()).isEqualTo(300);
        assertThat(marks.path("skin").path(0).path("row").asDouble()).isEqualTo(42);
        assertThat(marks.path("hazards")).hasSize(1);
        assertThat(texts(later.path("questions"), "means")).containsExactly("target", "skin");
    }

    @Test
    void marksThatComeBeforeTheirImageWaitForIt() throws Exception {
        try (OpenDoor empty = new OpenDoor()) {
            byte[] report = written(planned, "", TARGET);
            OpenDoor.Answer early = empty.postDicom("/v1/marks", report);
            assertThat(early.json().path("refused").path(0).path("why").asText())
                    .contains("does not hold");
            assertThat(early.json().path("caseId").isNull()).isTrue();
            assertThat(empty.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME).status())
                    .isEqualTo(201);
            String study = early.json().path("studyInstanceUid").asText();
            JsonNode account = empty.get("/v1/studies/" + study + "/marks").json();
            assertThat(account.path("caseId").asText()).startsWith("viewer-");
            assertThat(account.path("refused")).isEmpty();
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"label\":\"tip\",\"type\":\"POINT\",\"points\":[900,300]}|outside its image",
                "{\"label\":\"tip\",\"type\":\"POINT\",\"points\":[10]}|pairs",
                "{\"label\":\"tip\",\"type\":\"POINT\",\"points\":[1,2,3],\"valueType\":\"SCOORD3D\"}|SCOORD3D",
                "{\"label\":\"tip\",\"type\":\"POINT\",\"points\":[10,10],\"image\":\"2.25.9\"}|does not hold",
                "{\"label\":\"tip\",\"type\":\"POINT\",\"points\":[10,10],\"frame\":2}|frame 2",
                "{\"label\":\"tip\",\"type\":\"POINT\",\"points\":[10,10],\"byReference\":true,\"refersTo\":[1,1]}|above itself",
                "{\"label\":\"tip\",\"type\":\"POINT\",\"points\":[10,10],\"byReference\":true,\"refersTo\":[1,9]}|not there"
            })
    void oneImpossibleMarkAndNothingOfTheObjectIsAttached(String impossible, String why) throws Exception {
        JsonNode account = sent(written(planned, "", TARGET, impossible));
        assertThat(account.path("refused").path(0).path("why").asText()).contains(why);
        assertThat(account.path("refused").path(0).path("remedy").asText()).isNotBlank();
        assertThat(account.path("placed")).isEmpty();
        assertThat(account.path("caseId").isNull()).isTrue();
    }

    @Test
    void referencesThatGoRoundInACircleAreRefused() throws Exception {
        String mark = "{\"type\":\"POINT\",\"points\":[10,10],\"byReference\":true,\"refersTo\":[1,1,%d,4,1]}";
        JsonNode account = sent(written(planned, "", mark.formatted(2), mark.formatted(1), TARGET));
        assertThat(account.path("refused").path(0).path("why").asText()).contains("in a circle");
        assertThat(account.path("placed")).isEmpty();
        assertThat(account.path("caseId").isNull()).isTrue();
    }

    @Test
    void aReportDeeperThanAnybodyWritesIsRefused() throws Exception {
        OpenDoor.Answer answer = door.postDicom("/v1/marks", written(planned, "\"depth\":80,", TARGET));
        assertThat(answer.status()).as(answer.text()).isEqualTo(422);
        assertThat(answer.json().path("detail").asText()).contains("levels");
        assertThat(door.get("/v1/studies/" + study() + "/marks")
                        .json()
                        .path("caseId")
                        .isNull())
                .isTrue();
    }

    private String study() throws Exception {
        return door.send(door.request("/dicomweb/studies")
                        .header("Accept", "application/dicom+json")
                        .GET())
                .json()
                .at("/0/0020000D/Value/0")
                .asText();
    }

    @Test
    void marksOfAnotherPatientAreRefused() throws Exception {
        JsonNode account = sent(written(planned, "\"patient\":\"SOMEBODY-ELSE\",", TARGET));
        assertThat(account.path("refused").path(0).path("why").asText()).contains("another patient");
        assertThat(account.path("caseId").isNull()).isTrue();
        assertThat(account.toString()).doesNotContain("SOMEBODY-ELSE");
    }

    @Test
    void moreItemsThanAnybodyDrawsAreRefused() throws Exception {
        String[] many = new String[2_000];
        Arrays.fill(many, SKIN);
        OpenDoor.Answer answer = door.postDicom("/v1/marks", written(planned, "", many));
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.json().path("detail").asText()).contains("20000 items");
    }

    @Test
    void aSignedCaseTakesNothingMore() throws Exception {
        assertThat(door.post("/v1/records", SampleBodies.CASE).status()).isEqualTo(201);
        JsonNode account = sent(written(planned, "", TARGET));
        assertThat(account.path("caseId").isNull()).isTrue();
        assertThat(texts(account.path("questions"), "text")).anyMatch(text -> text.contains("amendment"));
    }

    @Test
    void ourOwnReportsAreNoMarks() throws Exception {
        String record = door.post("/v1/records", SampleBodies.CASE)
                .json()
                .path("recordUid")
                .asText();
        String study = door.send(door.request("/dicomweb/instances?SOPInstanceUID=" + record)
                        .header("Accept", "application/dicom+json")
                        .GET())
                .json()
                .path(0)
                .path("0020000D")
                .path("Value")
                .path(0)
                .asText();
        JsonNode account = door.get("/v1/studies/" + study + "/marks").json();
        assertThat(account.path("placed")).isEmpty();
        assertThat(account.path("unmatched")).isEmpty();
        assertThat(account.path("refused")).isEmpty();
    }

    @Test
    void aFrameIsNoReport() throws Exception {
        OpenDoor.Answer answer = door.postDicom("/v1/marks", SampleBodies.PLANNED_FRAME);
        assertThat(answer.status()).as(answer.text()).isIn(415, 422);
        assertThat(answer.json().path("remedy").asText()).contains("/v1/frames");
    }

    @Test
    void aStudyThatIsNotHeldIsNotFound() throws Exception {
        assertThat(door.get("/v1/studies/2.25.404/marks").status()).isEqualTo(404);
        HttpRequest.Builder post = door.request("/v1/studies/2.25.404/marks").POST(HttpRequest.BodyPublishers.noBody());
        assertThat(door.send(post).status()).isEqualTo(404);
    }
}
