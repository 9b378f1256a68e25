// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.UnfitFrames;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.record.Cautions;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CommandLineTest {
    @TempDir
    static Path folder;

    private static SampleFolder samples;

    @BeforeAll
    static void makeSamples() throws Exception {
        samples = new SampleFolder(folder);
    }

    private static Path at(String name) {
        return folder.resolve(name);
    }

    private static String unwrapped(String text) {
        return text.replaceAll("\\s+", " ");
    }

    private static Invoked refused(Invoked invoked, String field) {
        assertThat(invoked.code()).as(invoked.err()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(invoked.out()).isEmpty();
        assertThat(invoked.err()).startsWith("plumbline: " + field);
        assertThat(invoked.err().lines().count()).as("problem and remedy").isEqualTo(2);
        assertThat(invoked.err()).doesNotContain("Exception").doesNotContain("\tat ");
        return invoked;
    }

    @Test
    void aPlanIsSaidInWordsWithCautions() {
        Invoked plan = Invoked.plumbline("plan", at("in-plane.json"));
        assertThat(plan.code()).as(plan.err()).isZero();
        assertThat(plan.err()).isEmpty();
        assertThat(plan.out())
                .contains("Enter ", "angle to skin", "33.7\u00b0", "path", "54.1 mm", "Other angles", "lead-in")
                .contains("The stated path fits the limits you set, for what you marked.");
        assertThat(unwrapped(plan.out())).endsWith(unwrapped(Cautions.text()) + " ");
    }

    @Test
    void aPlanIsOneJsonDocument() throws Exception {
        JsonNode answer =
                Invoked.plumbline("plan", at("in-plane.json"), "--json").json();
        assertThat(answer.path("plan").path("angleToSkinDeg").path("value").doubleValue())
                .isCloseTo(33.69, within(0.01));
        assertThat(answer.path("cautions").get(0).asText()).isEqualTo(Cautions.text());
    }

    @Test
    void aProposalIsSaidToBeOne() {
        Invoked plan = Invoked.plumbline("plan", at("proposal.json"));
        assertThat(plan.code()).isZero();
        assertThat(plan.out()).contains("The proposed path fits");
    }

    @Test
    void anInfeasiblePlanEndsWithNoAndSaysWhatForbidsIt() throws Exception {
        Path file = samples.write(
                "short.json", samples.text("in-plane.json").replaceAll("\"lengthMm\" *: *[0-9.]+", "\"lengthMm\": 25"));
        Invoked plan = Invoked.plumbline("plan", file);
        assertThat(plan.code()).isEqualTo(ExitCode.NO);
        assertThat(plan.out()).contains("does not fit the limits you set", "the needle does not reach");
        Invoked json = Invoked.plumbline("plan", file, "--json");
        assertThat(json.code()).isEqualTo(ExitCode.NO);
        assertThat(json.json().path("plan").path("binding").get(0).asText()).isEqualTo("reach");
    }

    @Test
    void aComparisonIsATableWithUncertainty() {
        Invoked compared = Invoked.plumbline("compare", at("in-plane.json"));
        assertThat(compared.code()).as(compared.err()).isZero();
        assertThat(compared.out())
                .contains("planned", "observed", "observed - planned", "tip depth", "\u00b1", "(k = 2)")
                .contains("Observation obs-1, final tip");
        assertThat(unwrapped(compared.out())).contains(unwrapped(Cautions.text()));
        Invoked crossing = Invoked.plumbline("compare", at("out-of-plane.json"));
        assertThat(crossing.code()).as(crossing.err()).isZero();
        assertThat(crossing.out()).contains("crossing depth", "puncture from beam");
    }

    @Test
    void aComparisonIsOneJsonDocument() throws Exception {
        JsonNode answer =
                Invoked.plumbline("compare", at("in-plane.json"), "--json").json();
        assertThat(answer.path("observations")).hasSize(1);
        assertThat(answer.path("deviations").get(0).path("tipDepthMm").has("exceedsUncertainty"))
                .isTrue();
    }

    @Test
    void answersAreDrawn() throws Exception {
        Path svg = at("drawn/plan.svg");
        Path png = at("drawn/compared.png");
        assertThat(Invoked.plumbline("plan", at("in-plane.json"), "--svg", svg).code())
                .isZero();
        assertThat(Invoked.plumbline("compare", at("in-plane.json"), "--json", "--png", png)
                        .code())
                .isZero();
        assertThat(Files.readString(svg)).startsWith("<svg").contains("</svg>");
        BufferedImage drawn = ImageIO.read(png.toFile());
        assertThat(drawn.getWidth()).isGreaterThan(300);
        try (Stream<Path> files = Files.list(at("drawn"))) {
            assertThat(files).containsExactlyInAnyOrder(svg, png);
        }
    }

    @Test
    void severalDrawingsAreNumbered() {
        assertThat(Drawings.numbered(Path.of("a/b.c.svg"), 0)).isEqualTo(Path.of("a/b.c.svg"));
        assertThat(Drawings.numbered(Path.of("a/b.c.svg"), 1)).isEqualTo(Path.of("a/b.c-2.svg"));
        assertThat(Drawings.numbered(Path.of("b"), 2)).isEqualTo(Path.of("b-3"));
    }

    @Test
    void aRecordIsWrittenAndTheSameCaseGivesTheSameBytes() throws Exception {
        Invoked first = Invoked.plumbline("record", at("in-plane.json"), "--out", at("record"));
        assertThat(first.code()).as(first.err()).isZero();
        List<Path> paths = first.out().lines().map(Path::of).toList();
        assertThat(paths).hasSize(7).allMatch(Files::exists);
        Path report = at("record/sr.dcm");
        assertThat(paths).contains(report);
        assertThat(DicomFile.open(report).sopClassUid()).isEqualTo("1.2.840.10008.5.1.4.1.1.88.33");
        List<byte[]> bytes = read(paths);
        assertThat(Invoked.plumbline("record", at("in-plane.json"), "--out", at("record"))
                        .code())
                .isZero();
        assertThat(read(paths)).containsExactlyElementsOf(bytes);
    }

    private static List<byte[]> read(List<Path> paths) throws IOException {
        List<byte[]> all = new ArrayList<>();
        for (Path path : paths) {
            all.add(Files.readAllBytes(path));
        }
        return all;
    }

    @Test
    void aRecordIsReadBackAndConforms() throws Exception {
        assertThat(Invoked.plumbline("record", at("in-plane.json"), "--out", at("readable"))
                        .code())
                .isZero();
        Path report = at("readable/sr.dcm");
        Invoked text = Invoked.plumbline("show", report);
        assertThat(text.code()).as(text.err()).isZero();
        assertThat(text.out()).contains("33.7").containsIgnoringCase("deviation");
        JsonNode document = Invoked.plumbline("show", report, "--json").json();
        JsonNode plan = Invoked.plumbline("plan", at("in-plane.json"), "--json").json();
        assertThat(document.path("schema").asText()).isEqualTo("plumbline-case/1");
        assertThat(document.path("intent").path("entryDistanceMm").doubleValue())
                .isEqualTo(
                        plan.path("plan").path("entryDistanceMm").path("value").doubleValue());
        Invoked checked = Invoked.plumbline("check", report);
        assertThat(checked.code()).as(checked.out()).isZero();
        assertThat(checked.out()).contains("TID 1501 row 1").contains("conforms to the templates");
        Path planned = at("in-plane-plan.dcm");
        assertThat(Invoked.plumbline("check", report, "--frame", planned).code())
                .isZero();
        refused(Invoked.plumbline("check", report, "--frame", at("nowhere.dcm")), "");
    }

    /** The side is not stated; the shaft of the observation tells it, also where the plan alone is asked for. */
    @Test
    void planAndCompareAgreeWhereTheSideIsOnlySeen() throws Exception {
        ObjectNode document = (ObjectNode) new ObjectMapper().readTree(Files.readString(at("in-plane.json")));
        document.withObjectProperty("probe").remove("needleSide");
        Path file = samples.write("side-only-seen.json", document.toString());
        Invoked planned = Invoked.plumbline("plan", file, "--json");
        assertThat(planned.code()).as(planned.err()).isZero();
        JsonNode compared = Invoked.plumbline("compare", file, "--json").json();
        assertThat(planned.json().path("plan")).isEqualTo(compared.path("plan"));
        document.remove("observations");
        refused(
                Invoked.plumbline("plan", samples.write("side-unknown.json", document.toString())),
                "/probe/needleSide");
    }

    @Test
    void anImageIsNoRecord() throws Exception {
        Invoked record = Invoked.plumbline("record", at("in-plane.json"), "--out", at("with-image"));
        Path image = at("with-image/sc-1.dcm");
        assertThat(record.out().lines().map(Path::of)).contains(image);
        refused(Invoked.plumbline("show", image), "");
        refused(Invoked.plumbline("show", image, "--json"), "");
        assertThat(Invoked.plumbline("check", image).out()).contains("The annotated frame conforms.");
        refused(Invoked.plumbline("check", at("in-plane-plan.dcm")), "");
        refused(Invoked.plumbline("check", at("in-plane.json")), "");
        refused(Invoked.plumbline("show", at("nowhere.dcm")), "The file");
    }

    @Test
    void aFrameIsExplained() throws Exception {
        Path frame = at("in-plane-plan.dcm");
        Path picture = at("regions.png");
        Invoked words = Invoked.plumbline("frame", frame, "--png", picture);
        assertThat(words.code()).as(words.err()).isZero();
        assertThat(words.out()).contains("mm");
        assertThat(ImageIO.read(picture.toFile()).getWidth()).isGreaterThan(300);
        JsonNode json = Invoked.plumbline("frame", frame, "--json").json();
        assertThat(json.path("calibration").path("source").asText()).isEqualTo("ultrasoundRegions");
        refused(Invoked.plumbline("frame", frame, "--frame", "2"), "Frame 2 does not exist");
        refused(Invoked.plumbline("frame", at("in-plane.json")), "");
    }

    @Test
    void aDraftTakesTheTimeThatIsGiven() throws Exception {
        for (String out : List.of("draft-1", "draft-2")) {
            Invoked record = Invoked.plumbline(
                    "record", at("proposal.json"), "--out", at(out), "--time", "2026-02-01T08:00:00+01:00");
            assertThat(record.code()).as(record.err()).isZero();
        }
        assertThat(at("draft-1/sr.dcm")).hasSameBinaryContentAs(at("draft-2/sr.dcm"));
        refused(Invoked.plumbline("record", at("proposal.json"), "--out", at("none"), "--time", "yesterday"), "--time");
        assertThat(at("none")).doesNotExist();
    }

    /** The signature's time is the record's; another time given besides is said not to count, and changes no byte. */
    @Test
    void aSignedCaseHasTheTimeOfItsSignature() throws Exception {
        Path out = at("signed-twice");
        assertThat(Invoked.plumbline("record", at("in-plane.json"), "--out", out)
                        .code())
                .isZero();
        byte[] report = Files.readAllBytes(out.resolve("sr.dcm"));
        Invoked again =
                Invoked.plumbline("record", at("in-plane.json"), "--out", out, "--time", "2030-02-01T08:00:00+01:00");
        assertThat(again.code()).as(again.err()).isZero();
        assertThat(again.err())
                .contains("--time does not count here")
                .contains(new ObjectMapper()
                        .readTree(Files.readString(at("in-plane.json")))
                        .at("/signature/time")
                        .asText()
                        .substring(0, 16));
        assertThat(out.resolve("sr.dcm")).hasBinaryContent(report);
        assertThat(Invoked.plumbline(
                                "record",
                                at("proposal.json"),
                                "--out",
                                at("two-times"),
                                "--time",
                                "2026-02-01T08:00:00Z")
                        .code())
                .isZero();
        refused(
                Invoked.plumbline(
                        "record", at("proposal.json"), "--out", at("two-times"), "--time", "2026-02-02T08:00:00Z"),
                "The file");
    }

    @Test
    void anotherRecordIsNotOverwritten() throws Exception {
        Path out = Files.createDirectories(at("occupied"));
        Files.writeString(out.resolve("sr.dcm"), "another");
        refused(Invoked.plumbline("record", at("in-plane.json"), "--out", out), "The file");
        try (Stream<Path> files = Files.list(out)) {
            assertThat(files).containsExactly(out.resolve("sr.dcm"));
        }
        assertThat(out.resolve("sr.dcm")).hasContent("another");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"schema\" : \"plumbline-case/1\"|\"schema\" : \"plumbline-case/9\"|/schema",
                "\"needle\" :|\"neele\" :|/neele",
                "\"lengthMm\" : |\"lengthMm\" : NaN, \"gauge\" : |/needle",
                "\"laterality\" : \"[a-z]+\"|\"laterality\" : \"bilateral\"|/context/laterality",
                "\"entryDistanceMm\" :|\"angleToSkinDeg\" : 30, \"entryDistanceMm\" :|/intent",
                "\"target\" : \\{|\"target\" : {\"z\" : 1, |/marks/target/z",
                "\"row\" : [0-9.]+|\"row\" : \"x\"|/",
            })
    void refusesBadInputAndNamesTheField(String instead, String of, String field) throws Exception {
        String json = samples.text("in-plane.json");
        String bad = json.replaceFirst(instead, of);
        assertThat(bad).isNotEqualTo(json);
        Path file = samples.write("bad.json", bad);
        for (String command : List.of("plan", "compare")) {
            refused(Invoked.plumbline(command, file), field);
        }
        refused(Invoked.plumbline("record", file, "--out", at("nothing")), field);
        assertThat(at("nothing")).doesNotExist();
    }

    @Test
    void anUnknownFieldIsRefusedWithTheNearestName() throws Exception {
        Path file = samples.write("bad.json", samples.text("in-plane.json").replace("footprintMm", "footprint"));
        assertThat(refused(Invoked.plumbline("plan", file), "/probe/footprint").err())
                .contains("\"footprintMm\"");
    }

    @ParameterizedTest
    @ValueSource(strings = {"missing", "notDicom", "truncated", "empty", "aFolder"})
    void refusesWhatIsNoFrame(String kind) throws Exception {
        byte[] frame;
        try (Stream<Path> files = Files.list(folder)) {
            frame = Files.readAllBytes(
                    files.filter(f -> f.toString().endsWith(".dcm")).findFirst().orElseThrow());
        }
        Path bad = at("bad-" + kind + ".dcm");
        switch (kind) {
            case "notDicom" -> Files.writeString(bad, "This is a letter, and it is long enough to be read.".repeat(9));
            case "truncated" -> Files.write(bad, java.util.Arrays.copyOf(frame, frame.length / 2));
            case "empty" -> Files.write(bad, new byte[0]);
            case "aFolder" -> Files.createDirectories(bad);
            default -> assertThat(bad).doesNotExist();
        }
        Path file = samples.write(
                "bad.json",
                samples.text("in-plane.json")
                        .replaceFirst("\"file\" : \"[^\"]*\"", "\"file\" : \"" + bad.getFileName() + "\""));
        refused(Invoked.plumbline("plan", file), "/frame");
        refused(Invoked.plumbline("record", file, "--out", at("nothing")), "/frame");
        assertThat(at("nothing")).doesNotExist();
    }

    @Test
    void refusesAMeasurementThatTheFrameDoesNotAllow() throws Exception {
        Files.write(at("no-scale.dcm"), UnfitFrames.withoutScale());
        Files.write(at("dual.dcm"), UnfitFrames.dualView());
        Files.write(at("no-pixels.dcm"), UnfitFrames.withoutPixels());
        String dual = "{\"file\":\"dual.dcm\"}";
        compared(UnfitFrames.caseOn("{\"file\":\"no-scale.dcm\"}", 150, 150, 40), "/frame");
        compared(UnfitFrames.caseOn("{\"file\":\"no-pixels.dcm\"}", 150, 150, 40), "/frame");
        compared(UnfitFrames.caseOn(dual, 150, 350, 40), "/marks/target: The marks /observations/0/shaft/0 and");
        compared(UnfitFrames.caseOn(dual, 5, 150, 40), "/marks/target");
        compared(UnfitFrames.caseWithCoincidentShaft(dual), "/observations/0/shaft");
        Path fit = samples.write("fit.json", UnfitFrames.caseOn(dual, 150, 150, 40));
        assertThat(Invoked.plumbline("compare", fit).code()).isZero();
    }

    private static void compared(String json, String field) throws Exception {
        refused(Invoked.plumbline("compare", samples.write("unfit.json", json), "--json"), field);
    }

    @Test
    void refusesAFrameNumberThatTheObjectDoesNotHave() throws Exception {
        Path file = samples.write(
                "bad.json", samples.text("in-plane.json").replaceFirst("\"frameNumber\" : 1", "\"frameNumber\" : 7"));
        assertThat(refused(Invoked.plumbline("plan", file), "/frame/frameNumber")
                        .err())
                .contains("from 1 to 1");
    }

    @Test
    void refusesACaseThatIsNotThereOrNoJson() throws Exception {
        refused(Invoked.plumbline("plan", at("nowhere.json")), "The file");
        refused(Invoked.plumbline("plan", samples.write("letter.json", "Dear colleague")), "This is not JSON");
        refused(Invoked.plumbline("plan", folder), "The file");
        refused(Invoked.plumbline("plan", samples.write("large.json", " ".repeat(1 << 21))), "The body is larger");
    }

    @Test
    void aStatedScaleIsEnoughForAPlanButNotForARecord() throws Exception {
        String json = samples.text("in-plane.json")
                .replaceAll(
                        "\"frame\" : \\{[^}]*}",
                        "\"frame\" : {\"columns\":1200,\"rows\":1200,\"mmPerColumn\":0.06,\"mmPerRow\":0.06}");
        Path file = samples.write("stated.json", json);
        assertThat(Invoked.plumbline("plan", file, "--json").json().path("plan").isObject())
                .isTrue();
        refused(Invoked.plumbline("record", file, "--out", at("nothing")), "/frame");
        assertThat(at("nothing")).doesNotExist();
    }

    @Test
    void ourOwnFaultIsExitThreeWithAnIncidentAndATraceOnDemand() {
        Invoked served = Invoked.plumbline("serve");
        assertThat(served.code()).isEqualTo(ExitCode.OUR_FAULT);
        assertThat(served.out()).isEmpty();
        assertThat(served.err())
                .containsPattern("Plumbline itself failed: incident [0-9a-f]{8} \\(IllegalStateException at dev\\.")
                .doesNotContain("\tat ")
                .doesNotContain("secret");
        assertThat(Invoked.plumbline("serve").err())
                .as("the same fault, the same number")
                .isEqualTo(served.err());
        for (Invoked asked : List.of(Invoked.plumbline("serve", "--debug"), Invoked.plumbline("--debug", "serve"))) {
            assertThat(asked.code()).isEqualTo(ExitCode.OUR_FAULT);
            assertThat(asked.err()).contains("at dev.plumbline");
        }
    }

    @Test
    void aPlanSaysHowToSetTheMachineAndWhichNeedleReaches() throws Exception {
        Invoked words = Invoked.plumbline("plan", at("in-plane.json"));
        assertThat(unwrapped(words.out()))
                .contains(
                        "Set the imaging depth to about 60 mm", "Shortest of the list that reaches with reserve: 80 mm")
                .contains("real systems with tubing and hub are far higher", "mirror reflection by geometry alone");
        assertThat(words.out().lines()).allMatch(line -> line.length() <= 100);
        JsonNode plan =
                Invoked.plumbline("plan", at("in-plane.json"), "--json").json().path("plan");
        assertThat(plan.path("setUpAdvice").path("imagingDepthMm").path("value").doubleValue())
                .isCloseTo(2 * plan.path("targetDepthMm").path("value").doubleValue(), within(1e-9));
        assertThat(plan.path("needleChoices")
                        .get(0)
                        .path("diameterSource")
                        .path("standing")
                        .textValue())
                .isEqualTo("cited");
    }

    @Test
    void needlesAreThoseOfTheSitesFile() throws Exception {
        Path needles = samples.write("needles.json", """
                {"schema":"plumbline-needles/1","foundations":{"x":{"standing":"label","text":"our label"}},
                 "gauges":[{"gauge":20,"outerDiameterMm":0.9,"innerDiameterMm":0.6,"foundation":"x"}],
                 "needles":[{"id":"only","tipType":"tuohy","lengthMm":90,"gauge":20,"echogenic":true}]}
                """);
        JsonNode choices = Invoked.plumbline("plan", at("in-plane.json"), "--json", "--needles", needles)
                .json()
                .path("plan")
                .path("needleChoices");
        assertThat(choices).hasSize(1);
        assertThat(choices.get(0).path("id").textValue()).isEqualTo("only");
        refused(Invoked.plumbline("plan", at("in-plane.json"), "--needles", at("nowhere.json")), "The file");
    }

    @Test
    void aMarkSetSeveralTimesIsAnsweredDrawnAndKeptInTheRecord() throws Exception {
        ObjectNode document = (ObjectNode) new ObjectMapper().readTree(samples.text("in-plane.json"));
        JsonNode once = document.path("marks").path("target");
        ArrayNode repeats =
                ((ObjectNode) document.path("marks")).putObject("target").putArray("repeats");
        for (int i = 0; i < 3; i++) {
            repeats.addObject()
                    .put("column", once.path("column").doubleValue() + i)
                    .put("row", once.path("row").doubleValue() - i)
                    .put("by", List.of("A", "B", "A").get(i));
        }
        Path file = samples.write("repeats.json", document.toString());
        JsonNode answer = Invoked.plumbline("compare", file, "--json").json();
        assertThat(answer.path("repeatedMarks").get(0).path("pointer").textValue())
                .isEqualTo("/marks/target");
        assertThat(answer.path("repeatedMarks").get(0).path("n").intValue()).isEqualTo(3);
        assertThat(Invoked.plumbline("plan", file).out()).contains("Marked several times", "/marks/target");
        assertThat(Invoked.plumbline("record", file, "--out", at("repeated")).code())
                .isZero();
        JsonNode back =
                Invoked.plumbline("show", at("repeated/sr.dcm"), "--json").json();
        assertThat(back.path("marks")
                        .path("target")
                        .path("repeats")
                        .get(1)
                        .path("by")
                        .textValue())
                .isEqualTo("B");
        assertThat(Invoked.plumbline("check", at("repeated/sr.dcm")).code()).isZero();
        repeats.remove(2);
        refused(
                Invoked.plumbline("plan", samples.write("two.json", document.toString())),
                "/marks/target/repeats: 2 marks of one point are too few");
    }

    @Test
    void severalObservationsOnOneFrameAreOneDrawing() throws Exception {
        String json = samples.text("in-plane.json");
        JsonNode document = new ObjectMapper().readTree(json);
        ArrayNode observations = (ArrayNode) document.path("observations");
        ObjectNode second = observations.get(0).deepCopy();
        second.put("id", "obs-again").put("tipIsTip", false);
        observations.add(second);
        Path svg = at("both/both.svg");
        Path file = samples.write("both.json", document.toString());
        Invoked compared = Invoked.plumbline("compare", file, "--svg", svg);
        assertThat(compared.code()).as(compared.err()).isZero();
        assertThat(unwrapped(compared.out())).contains("a nudge each way");
        assertThat(Files.readString(svg)).contains("obs-again: observed", "obs-1: observed");
        try (Stream<Path> files = Files.list(at("both"))) {
            assertThat(files).containsExactly(svg);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "nonsense", "plan", "record x.json", "plan x.json --nonsense", "samples --out x --seed y"})
    void refusesWhatIsNoCommand(String arguments) {
        Object[] words = arguments.isEmpty() ? new Object[0] : arguments.split(" ", -1);
        Invoked invoked = Invoked.plumbline(words);
        assertThat(invoked.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(invoked.out()).isEmpty();
        assertThat(invoked.err()).isNotBlank().doesNotContain("\tat ");
    }

    @Test
    void theVersionComesWithCautions() {
        PrintStream before = System.err;
        ByteArrayOutputStream complaints = new ByteArrayOutputStream();
        System.setErr(new PrintStream(complaints, true, StandardCharsets.UTF_8));
        Invoked version;
        try {
            version = Invoked.plumbline("--version");
        } finally {
            System.setErr(before);
        }
        assertThat(complaints.toString(StandardCharsets.UTF_8)).isEmpty();
        assertThat(version.code()).isZero();
        assertThat(version.out()).startsWith("plumbline 0.0-test");
        assertThat(unwrapped(version.out())).contains(unwrapped(Cautions.text()));
    }

    @Test
    void helpNamesEveryCommand() {
        assertThat(Invoked.plumbline("--help").out())
                .contains("plan", "compare", "record", "show", "check", "frame", "samples", "serve");
    }

    @Test
    void controlCharactersNeverReachTheTerminal() throws Exception {
        Path file = samples.write(
                "bad.json", samples.text("in-plane.json").replace("\"needle\" :", "\"\\u001b[31mred\\u202e\" :"));
        Invoked invoked = Invoked.plumbline("plan", file);
        assertThat(invoked.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(invoked.err())
                .doesNotContain("\u001b")
                .doesNotContain("\u202e")
                .contains("\\u001b");
    }
}
