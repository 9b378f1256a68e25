// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CaseInputsTest {
    private static final FrameGeometry FRAME =
            new FrameGeometry(640, 480, List.of(), Optional.of(new PixelSize(0.1, 0.1)), Optional.empty(), "probe 1");

    private static CaseDocument document(String frame, String more) {
        String json = "{\"schema\":\"plumbline-case/1\",\"approach\":\"inPlane\",\"frame\":" + frame + "," + more + "}";
        return CaseJson.read(json.getBytes(StandardCharsets.UTF_8), Door.CLI);
    }

    @Test
    void theSamePictureIsTheOneThatIsNamedTheSame() {
        CaseDocument document = document(
                "{\"sopInstanceUid\":\"1.2.3\"}",
                "\"marks\":{\"target\":{\"column\":640,\"row\":0}},\"observations\":["
                        + "{\"frame\":{\"sopInstanceUid\":\"1.2.3\"}},{\"frame\":{\"sopInstanceUid\":\"1.2.3\",\"frameNumber\":2}}]");
        CaseInputs inputs = CaseInputs.of(document, frame -> FRAME);
        assertThat(inputs.plan().frame()).isEqualTo(FRAME);
        assertThat(inputs.observations()).extracting(o -> o.samePictureAsPlan()).containsExactly(true, false);
    }

    @Test
    void aStatedSizeAndScaleNameNoPicture() {
        CaseDocument document = document(
                "{\"columns\":100,\"rows\":200,\"mmPerColumn\":0.2,\"mmPerRow\":0.1}",
                "\"marks\":{\"target\":{\"column\":50,\"row\":90}},\"observations\":[{\"id\":\"a\"},{\"id\":\"b\"}]");
        CaseInputs inputs = CaseInputs.of(document, frame -> FRAME);
        assertThat(inputs.observations()).extracting(o -> o.samePictureAsPlan()).containsExactly(false, false);
        assertThat(inputs.observations()
                        .get(0)
                        .frame()
                        .sameGeometryAs(inputs.plan().frame()))
                .as("so marks are taken over, as an assumption")
                .isTrue();
    }

    @Test
    void nothingIsComputedWhileNobodyHasSaidTheApproachButItsMarksAreChecked() {
        String json = "{\"schema\":\"plumbline-case/1\",\"frame\":{\"sopInstanceUid\":\"1.2.3\"},"
                + "\"marks\":{\"target\":{\"column\":%d,\"row\":1}}}";
        CaseDocument held = CaseJson.read(json.formatted(1).getBytes(StandardCharsets.UTF_8), Door.HTTP);
        CaseInputs.check(held, frame -> FRAME);
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> CaseInputs.of(held, frame -> FRAME));
        assertThat(refusal.problem()).isEqualTo(new Problem.MissingField("/approach", CaseDocument.SAY_THE_APPROACH));
        CaseDocument off = CaseJson.read(json.formatted(641).getBytes(StandardCharsets.UTF_8), Door.HTTP);
        Refusal outside = catchThrowableOfType(Refusal.class, () -> CaseInputs.check(off, frame -> FRAME));
        assertThat(outside.problem()).isEqualTo(new Problem.MarkOutsideFrame("/marks/target", 640, 480));
    }

    @Test
    void aRepeatOutsideTheFrameIsRefusedWhereItStands() {
        CaseDocument document = document(
                "{\"file\":\"f.dcm\"}",
                "\"marks\":{\"target\":{\"repeats\":[{\"column\":1,\"row\":1},{\"column\":1,\"row\":2},"
                        + "{\"column\":1,\"row\":481}]}}");
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> CaseInputs.of(document, frame -> FRAME));
        assertThat(refusal.problem()).isEqualTo(new Problem.MarkOutsideFrame("/marks/target/repeats/2", 640, 480));
    }

    @Test
    void aFrameThatCannotBeHadIsRefusedAtThePlaceThatNamesIt() {
        CaseDocument document = document(
                "{\"file\":\"a.dcm\"}",
                "\"marks\":{\"target\":{\"column\":1,\"row\":1}},\"observations\":[{\"frame\":{\"file\":\"b.dcm\"}}]");
        Refusal refusal = catchThrowableOfType(
                Refusal.class,
                () -> CaseInputs.of(document, frame -> {
                    if (frame.equals(new FrameRef.File("b.dcm", 1))) {
                        throw new Refusal(new Problem.MalformedObject("", "It is not DICOM.", "Send another."));
                    }
                    return FRAME;
                }));
        assertThat(refusal.problem())
                .isEqualTo(new Problem.MalformedObject("/observations/0/frame", "It is not DICOM.", "Send another."));
    }

    @Test
    void aStatedScaleNeedsNoFrame() {
        CaseDocument document = document(
                "{\"columns\":100,\"rows\":200,\"mmPerColumn\":0.2,\"mmPerRow\":0.1}",
                "\"marks\":{\"target\":{\"column\":1,\"row\":1}}");
        CaseInputs inputs = CaseInputs.of(document, frame -> {
            throw new IllegalStateException("not asked");
        });
        assertThat(inputs.plan().frame().statedScale()).contains(new PixelSize(0.2, 0.1));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"marks\":{\"target\":{\"column\":640.1,\"row\":1}}|/marks/target",
                "\"marks\":{\"target\":{\"column\":1,\"row\":-1}}|/marks/target",
                "\"marks\":{\"target\":{\"column\":1,\"row\":1},\"skin\":[{\"column\":1,\"row\":1},{\"column\":1,\"row\":900}]}"
                        + "|/marks/skin/1",
                "\"marks\":{\"target\":{\"column\":1,\"row\":1},\"nerves\":[{\"name\":\"n\",\"disc\":{\"radiusMm\":1,"
                        + "\"center\":{\"column\":-1,\"row\":1}}}]}|/marks/nerves/0/disc/center",
                "\"marks\":{\"target\":{\"column\":1,\"row\":1},\"hazards\":[{\"name\":\"n\",\"outline\":[{\"column\":1,\"row\":1},"
                        + "{\"column\":1,\"row\":9},{\"column\":641,\"row\":1}]}]}|/marks/hazards/0/outline/2",
                "\"marks\":{\"target\":{\"column\":1,\"row\":1}},\"probe\":{\"midpoint\":{\"column\":700,\"row\":1}}"
                        + "|/probe/midpoint",
                "\"marks\":{\"target\":{\"column\":1,\"row\":1}},\"intent\":{\"entry\":{\"column\":700,\"row\":1}}"
                        + "|/intent/entry",
                "\"marks\":{\"target\":{\"column\":1,\"row\":1}},\"observations\":[{\"tip\":{\"column\":700,\"row\":1}}]"
                        + "|/observations/0/tip",
                "\"marks\":{\"target\":{\"column\":1,\"row\":1}},\"observations\":[{\"shaft\":[{\"column\":1,\"row\":1},"
                        + "{\"column\":1,\"row\":481}]}]|/observations/0/shaft/1",
            })
    void refusesAMarkOutsideItsFrame(String fields, String pointer) {
        CaseDocument document = document("{\"file\":\"f.dcm\"}", fields);
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> CaseInputs.of(document, frame -> FRAME));
        assertThat(refusal.problem()).isEqualTo(new Problem.MarkOutsideFrame(pointer, 640, 480));
    }
}
