// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.plan.Intent;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CaseJsonTest {
    private static final String START = "{\"schema\":\"plumbline-case/1\",\"approach\":\"inPlane\","
            + "\"frame\":{\"columns\":640,\"rows\":640,\"mmPerColumn\":0.1,\"mmPerRow\":0.1},";
    private static final String LEAST = START + "\"marks\":{\"target\":{\"column\":320,\"row\":300}}";

    private static byte[] everything() throws Exception {
        try (InputStream in =
                Objects.requireNonNull(CaseJsonTest.class.getResourceAsStream("/cases/everything.json"))) {
            return in.readAllBytes();
        }
    }

    private static CaseDocument read(String json) {
        return CaseJson.read(json.getBytes(StandardCharsets.UTF_8), Door.HTTP);
    }

    private static Problem refused(String json) {
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> read(json));
        assertThat(refusal).as("is refused: %s", json).isNotNull();
        assertThat(refusal.problem().detail()).isNotBlank();
        assertThat(refusal.problem().remedy()).isNotBlank();
        return refusal.problem();
    }

    @Test
    void readsEveryFieldOfTheExampleAndLosesNone() throws Exception {
        JsonNode given = new ObjectMapper().readTree(everything());
        CaseDocument document = CaseJson.read(everything(), Door.CLI);
        assertThat(Canonical.text(CaseJson.write(document))).isEqualTo(Canonical.text(given));
        assertThat(document.frame()).isEqualTo(new FrameRef.File("frame.dcm", 1));
        assertThat(document.intent()).contains(new Intent.EntryDistance(29));
        assertThat(document.probe().skinBeyondProbe()).contains(new SkinBeyondProbe.Flat());
        assertThat(document.marks().hazards()).hasSize(2);
        assertThat(document.observations().get(0).marks().tip()).contains(new PointPx(322, 360));
    }

    @Test
    void theLeastDocumentIsRead() {
        CaseDocument document = read(LEAST + "}");
        assertThat(document.marks().target()).isEqualTo(new PointPx(320, 300));
        assertThat(document.signature()).isEmpty();
    }

    @Test
    void anApproachThatNobodySaidIsUnknownAndAnIntentNeedsOne() {
        String unsaid = (LEAST + "}").replace("\"approach\":\"inPlane\",", "");
        CaseDocument document = read(unsaid);
        assertThat(document.technique()).isEmpty();
        assertThat(CaseJson.write(document).has("approach")).isFalse();
        Problem refused = refused(unsaid.substring(0, unsaid.length() - 1) + ",\"intent\":{\"entryDistanceMm\":30}}");
        assertThat(refused).isInstanceOf(Problem.MissingField.class);
        assertThat(refused.pointer()).isEqualTo("/approach");
    }

    @Test
    void nullCountsAsNotSaid() {
        assertThat(read(LEAST + ",\"intent\":null,\"needle\":{\"gauge\":null},\"observations\":[]}"))
                .isEqualTo(read(LEAST + "}"));
    }

    @Test
    void marksAreRoundedToSixtyFourths() {
        CaseDocument document = read(START + "\"marks\":{\"target\":{\"column\":320.1,\"row\":0.007}}}");
        assertThat(document.marks().target()).isEqualTo(new PointPx(320.09375, 0));
        assertThat(read(START + "\"marks\":{\"target\":{\"column\":-0.0,\"row\":-0.001}}}")
                        .marks()
                        .target())
                .isEqualTo(new PointPx(0, 0));
    }

    @Test
    void anObservationWithoutAFrameIsOnThePlannedOne() {
        CaseDocument document = read(LEAST + ",\"observations\":[{\"tip\":{\"column\":1,\"row\":2}}]}");
        assertThat(document.observations().get(0).frame()).isEqualTo(document.frame());
        assertThat(document.observations().get(0).marks().id()).isEqualTo("obs-1");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{}|/schema|MissingField",
                "{\"schema\":\"plumbline-case/2\"}|/schema|UnreadableDocument",
                "{\"schema\":1}|/schema|UnreadableDocument",
                "{\"schema\":\"plumbline-case/1\"}|/frame|MissingField",
                "{\"schema\":\"plumbline-case/1\",\"approach\":\"sideways\"}|/approach|InvalidValue",
                "{\"schema\":\"plumbline-case/1\",\"approach\":\"inPlane\"}|/frame|MissingField",
                "[]||UnreadableDocument",
                "3||UnreadableDocument",
                "''||UnreadableDocument",
                "{||UnreadableDocument",
                "{} {}||UnreadableDocument",
            })
    void refusesWhatIsNoCase(String json, String pointer, String problem) {
        Problem refused = refused(json);
        assertThat(refused.pointer()).isEqualTo(pointer == null ? "" : pointer);
        assertThat(refused.getClass().getSimpleName()).isEqualTo(problem);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"neele\":{}|/neele|UnknownField",
                "\"needle\":{\"gage\":22}|/needle/gage|UnknownField",
                "\"needle\":[]|/needle|InvalidValue",
                "\"needle\":{\"gauge\":\"22\"}|/needle/gauge|InvalidValue",
                "\"needle\":{\"gauge\":22.5}|/needle/gauge|InvalidValue",
                "\"needle\":{\"echogenic\":\"yes\"}|/needle/echogenic|InvalidValue",
                "\"needle\":{\"lengthMm\":NaN}|/needle/lengthMm|InvalidValue",
                "\"needle\":{\"lengthMm\":Infinity}|/needle/lengthMm|InvalidValue",
                "\"needle\":{\"lengthMm\":-Infinity}|/needle/lengthMm|InvalidValue",
                "\"needle\":{\"lengthMm\":1e999}|/needle/lengthMm|InvalidValue",
                "\"needle\":{\"lengthMm\":0}|/needle/lengthMm|InvalidValue",
                "\"needle\":{\"lengthMm\":-50}|/needle/lengthMm|InvalidValue",
                "\"needle\":{},\"needle\":{}|/needle|ContradictoryFields",
                "\"needle\":{\"gauge\":22,\"gauge\":23}|/needle/gauge|ContradictoryFields",
                "\"intent\":{}|/intent|ContradictoryFields",
                "\"intent\":{\"entryDistanceMm\":20,\"angleToSkinDeg\":30}|/intent|ContradictoryFields",
                "\"intent\":{\"punctureDistanceMm\":20}|/intent/punctureDistanceMm|ContradictoryFields",
                "\"intent\":{\"angleToSkinDeg\":120}|/intent/angleToSkinDeg|InvalidValue",
                "\"context\":{\"laterality\":\"bilateral\"}|/context/laterality|InvalidValue",
                "\"context\":{\"laterality\":\"upper\"}|/context/laterality|InvalidValue",
                "\"context\":{\"block\":\"a\\u0000b\"}|/context/block|InvalidValue",
                "\"context\":{\"operator\":{\"role\":\"performer\"}}|/context/operator/name|MissingField",
                "\"signature\":{\"name\":\"Doe^Jo\"}|/signature/time|MissingField",
                "\"signature\":{\"name\":\"Doe^Jo\",\"time\":\"2026-01-05T10:15:00\"}|/signature/time|InvalidValue",
                "\"signature\":{\"name\":\"Doe^Jo\",\"time\":\"10000-01-05T10:15:00Z\"}|/signature/time|InvalidValue",
                "\"signature\":{\"name\":\"A\\\\B\",\"time\":\"2026-01-05T10:15:00Z\"}|/signature/name|InvalidValue",
                "\"constraints\":{\"angleBandDeg\":[45,30]}|/constraints/angleBandDeg|InvalidValue",
                "\"constraints\":{\"angleBandDeg\":[0,30]}|/constraints/angleBandDeg/0|InvalidValue",
                "\"constraints\":{\"angleBandDeg\":[30,90]}|/constraints/angleBandDeg|InvalidValue",
                "\"constraints\":{\"angleBandDeg\":[30]}|/constraints/angleBandDeg|InvalidValue",
                "\"probe\":{\"skinBeyondProbe\":\"wavy\"}|/probe/skinBeyondProbe|InvalidValue",
                "\"probe\":{\"skinBeyondProbe\":{\"radiusMm\":60,\"dropMm\":3}}|/probe/skinBeyondProbe|ContradictoryFields",
                "\"probe\":{\"skinBeyondProbe\":{\"dropMm\":3}}|/probe/skinBeyondProbe/atMm|MissingField",
                "\"observations\":{}|/observations|InvalidValue",
                "\"observations\":[{\"shaft\":[{\"column\":1,\"row\":2}]}]|/observations/0/shaft|InvalidValue",
                "\"observations\":[{\"id\":\"a\"},{\"id\":\"a\"}]|/observations/1/id|InvalidValue",
                "\"observations\":[{\"id\":\"../a\"}]|/observations/0/id|InvalidValue",
                "\"observations\":[{\"frame\":{\"file\":\"x.dcm\"}}]|/observations/0/frame/file|InvalidValue",
                "\"caseId\":\"a b\"|/caseId|InvalidValue",
                "\"a/b~c\":1|/a~1b~0c|UnknownField",
            })
    void refusesAFieldAndNamesIt(String fields, String pointer, String problem) {
        Problem refused = refused(LEAST + "," + fields + "}");
        assertThat(refused.pointer()).isEqualTo(pointer);
        assertThat(refused.getClass().getSimpleName()).isEqualTo(problem);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{}|/marks/target|MissingField",
                "{\"target\":{\"column\":1}}|/marks/target/row|MissingField",
                "{\"target\":{\"column\":1,\"row\":NaN}}|/marks/target/row|InvalidValue",
                "{\"target\":{\"column\":1e999,\"row\":1}}|/marks/target/column|InvalidValue",
                "{\"target\":[1,2]}|/marks/target|InvalidValue",
                "{\"target\":{\"column\":1,\"row\":1,\"z\":1}}|/marks/target/z|UnknownField",
                "{\"target\":{\"column\":1,\"row\":1},\"skin\":[{\"column\":1,\"row\":1}]}|/marks/skin|InvalidValue",
                "{\"target\":{\"column\":1,\"row\":1},\"hazards\":[{\"name\":\"a\"}]}|/marks/hazards/0|ContradictoryFields",
                "{\"target\":{\"column\":1,\"row\":1},\"hazards\":[{\"name\":\"a\",\"outline\":[]}]}"
                        + "|/marks/hazards/0/outline|InvalidValue",
                "{\"target\":{\"column\":1,\"row\":1},\"hazards\":[{\"name\":\"a\",\"kind\":\"tree\"}]}"
                        + "|/marks/hazards/0/kind|InvalidValue",
                "{\"target\":{\"column\":1,\"row\":1},\"nerves\":[{\"disc\":{\"radiusMm\":1}}]}"
                        + "|/marks/nerves/0/name|MissingField",
                "{\"target\":{\"column\":1,\"row\":1},\"nerves\":[{\"name\":\"m\",\"disc\":{\"radiusMm\":1}}]}"
                        + "|/marks/nerves/0/disc/center|MissingField",
            })
    void refusesMarksAndNamesThem(String marks, String pointer, String problem) {
        Problem refused = refused(START + "\"marks\":" + marks + "}");
        assertThat(refused.pointer()).isEqualTo(pointer);
        assertThat(refused.getClass().getSimpleName()).isEqualTo(problem);
    }

    @ParameterizedTest
    @CsvSource({
        "neele, needle",
        "obervations, observations",
        "Frame, frame",
        "uncertanty, uncertainty",
        "constraint, constraints",
    })
    void anUnknownFieldIsRefusedWithTheNearestName(String typed, String meant) {
        Problem problem = refused(LEAST + ",\"" + typed + "\":{}}");
        assertThat(problem.remedy()).contains("\"" + meant + "\"");
    }

    @Test
    void anUnknownFieldWithNoneNearIsRefusedWithTheKnownNames() {
        Problem problem = refused(LEAST + ",\"intent\":{\"distanceFromProbe\":3}}");
        assertThat(problem.pointer()).isEqualTo("/intent/distanceFromProbe");
        assertThat(problem.remedy())
                .doesNotContain("Did you mean")
                .contains("entryDistanceMm, angleToSkinDeg, entry, punctureDistanceMm");
    }

    @Test
    void aFileIsRefusedOverHttpAndTakenOnTheCommandLine() {
        String json = LEAST.replaceFirst("\\{\"columns.*?}", "{\"file\":\"frame.dcm\"}") + "}";
        Problem problem = refused(json);
        assertThat(problem.pointer()).isEqualTo("/frame/file");
        assertThat(problem.remedy()).contains("POST /v1/frames");
        assertThat(CaseJson.read(json.getBytes(StandardCharsets.UTF_8), Door.CLI)
                        .frame())
                .isEqualTo(new FrameRef.File("frame.dcm", 1));
    }

    @Test
    void aFrameIsNamedInOneWayOnly() {
        String both = LEAST.replace("\"columns\":640", "\"columns\":640,\"sopInstanceUid\":\"1.2\"") + "}";
        assertThat(refused(both)).isInstanceOf(Problem.ContradictoryFields.class);
        String mixed = LEAST.replaceFirst("\\{\"columns.*?}", "{\"sopInstanceUid\":\"1.2\",\"rows\":3}") + "}";
        assertThat(refused(mixed)).isInstanceOf(Problem.ContradictoryFields.class);
        String none = LEAST.replaceFirst("\\{\"columns.*?}", "{}") + "}";
        assertThat(refused(none).pointer()).isEqualTo("/frame");
    }

    @Test
    void refusesWhatIsTooDeepTooLongOrTooLarge() {
        String deep = LEAST + ",\"context\":" + "{\"a\":".repeat(70) + "1" + "}".repeat(70) + "}";
        assertThat(refused(deep)).isInstanceOf(Problem.UnreadableDocument.class);
        String longNumber = LEAST + ",\"needle\":{\"lengthMm\":" + "1".repeat(70) + "}}";
        assertThat(refused(longNumber)).isInstanceOf(Problem.UnreadableDocument.class);
        String longName = LEAST + ",\"" + "n".repeat(300) + "\":1}";
        assertThat(refused(longName)).isInstanceOf(Problem.UnreadableDocument.class);
        String large = LEAST + ",\"context\":{\"block\":\"" + "b".repeat(StrictJson.LIMIT_BYTES) + "\"}}";
        assertThat(refused(large)).isInstanceOf(Problem.TooLarge.class);
        String longText = LEAST + ",\"context\":{\"block\":\"" + "b".repeat(65) + "\"}}";
        assertThat(refused(longText).pointer()).isEqualTo("/context/block");
        String manyPoints = START + "\"marks\":{\"target\":{\"column\":1,\"row\":1},\"skin\":["
                + "{\"column\":1,\"row\":1},".repeat(1000) + "{\"column\":1,\"row\":1}]}}";
        assertThat(refused(manyPoints).pointer()).isEqualTo("/marks/skin");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"\ufeff{}", "{'schema':1}", "{\"schema\":01}", "// x\n{}", "\u0000", "{\"schema\":\"\ud800\"}"})
    void refusesWhatIsNotJson(String json) {
        assertThat(refused(json)).isInstanceOf(Problem.class);
    }

    @Test
    void aRefusalNeverRepeatsAValue() {
        Problem problem = refused(LEAST + ",\"signature\":{\"name\":\"Canary^Name\\u0007\",\"time\":\"x\"}}");
        assertThat(problem.detail() + problem.remedy()).doesNotContain("Canary");
    }
}
