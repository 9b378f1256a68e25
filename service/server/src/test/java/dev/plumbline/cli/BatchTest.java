// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.config.NeedleFile;
import dev.plumbline.document.AnswerJson;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BatchTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TempDir
    static Path folder;

    private static SampleFolder samples;
    private static String good;

    @BeforeAll
    static void makeSamples() throws Exception {
        samples = new SampleFolder(folder);
        good = MAPPER.readTree(samples.text("in-plane.json")).toString();
    }

    private static Invoked batch(String lines) throws IOException {
        return Invoked.plumbline("compare", "--batch", samples.write("cases.ndjson", lines));
    }

    private static List<JsonNode> answers(Invoked invoked) throws IOException {
        List<JsonNode> answers = new ArrayList<>();
        for (String line : invoked.out().lines().toList()) {
            answers.add(MAPPER.readTree(line));
        }
        return answers;
    }

    @Test
    void everyLineHasTheAnswerThatItsCaseHasAlone() throws Exception {
        ObjectNode alone = (ObjectNode) Invoked.plumbline("compare", samples.path.resolve("in-plane.json"), "--json")
                .json();
        Invoked invoked = batch((good + "\n").repeat(150));
        assertThat(invoked.code()).as(invoked.err()).isZero();
        List<JsonNode> answers = answers(invoked);
        assertThat(answers).hasSize(150);
        for (int i = 0; i < answers.size(); i++) {
            ObjectNode answer = (ObjectNode) answers.get(i);
            assertThat(answer.remove("line").intValue()).isEqualTo(i + 1);
            answer.remove("caseId");
            assertThat(answer).isEqualTo(alone);
        }
        assertThat(invoked.err()).contains("150 cases read, 0 refused");
    }

    @Test
    void aBadLineIsAnsweredByItsOwnProblemAndCostsNoOther() throws Exception {
        String named = good.replaceFirst("\\{", "{\"caseId\":\"mine\",");
        String bad = named.replaceFirst("\"row\":[0-9.]+", "\"row\":\"x\"");
        Invoked invoked = batch(good + "\n\n{\n" + bad + "\n  \r\n" + "x".repeat(1 << 21) + "\n" + good);
        assertThat(invoked.code()).isEqualTo(ExitCode.BAD_INPUT);
        List<JsonNode> answers = answers(invoked);
        assertThat(answers).extracting(answer -> answer.path("line").intValue()).containsExactly(1, 3, 4, 6, 7);
        assertThat(answers.get(0).has("plan")).isTrue();
        assertThat(answers.get(1).path("problem").path("type").textValue())
                .isEqualTo("urn:plumbline:problem:unreadable-document");
        JsonNode problem = answers.get(2).path("problem");
        assertThat(problem.path("pointer").textValue()).endsWith("/row");
        assertThat(problem.path("remedy").textValue()).isNotBlank();
        assertThat(answers.get(3).path("problem").path("type").textValue())
                .isEqualTo("urn:plumbline:problem:too-large");
        assertThat(answers.get(4).has("plan")).isTrue();
    }

    @Test
    void bytesThatAreNoTextAreRefusedOnTheirLine() throws Exception {
        Path file = folder.resolve("bytes.ndjson");
        try (OutputStream out = Files.newOutputStream(file)) {
            out.write("{\"schema\":\"".getBytes(StandardCharsets.UTF_8));
            out.write(new byte[] {(byte) 0xff, (byte) 0xfe, 0, (byte) 0xc3});
            out.write(("\"}\n" + good + "\n").getBytes(StandardCharsets.UTF_8));
        }
        List<JsonNode> answers = answers(Invoked.plumbline("compare", "--batch", file));
        assertThat(answers).hasSize(2);
        assertThat(answers.get(0).has("problem")).isTrue();
        assertThat(answers.get(1).has("plan")).isTrue();
    }

    @Test
    void readsStandardInput() throws Exception {
        ObjectNode stated = (ObjectNode) MAPPER.readTree(good);
        stated.remove("observations");
        stated.putObject("frame")
                .put("columns", 1200)
                .put("rows", 1200)
                .put("mmPerColumn", 0.06)
                .put("mmPerRow", 0.06);
        Invoked invoked = Invoked.reading(stated.toString(), "compare", "--batch", "-");
        assertThat(invoked.code()).as(invoked.err()).isZero();
        assertThat(answers(invoked)).hasSize(1);
    }

    @Test
    void aReaderThatGoesAwayEndsItQuietly() throws Exception {
        StringWriter err = new StringWriter();
        Terminal terminal = new Terminal(new PrintWriter(new StringWriter()), new PrintWriter(err));
        BatchAnswers answers = new BatchAnswers(new AnswerJson(NeedleFile.shipped()), folder, new FrameFiles.Kept(2));
        OutputStream closed = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("Broken pipe");
            }
        };
        byte[] lines = (good + "\n").repeat(500).getBytes(StandardCharsets.UTF_8);
        assertThat(new Batch(answers, terminal).run(new ByteArrayInputStream(lines), closed))
                .isZero();
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void aFileThatCannotBeReadToItsEndIsAFaultAndNotAnEnd() {
        Terminal terminal = new Terminal(new PrintWriter(new StringWriter()), new PrintWriter(new StringWriter()));
        BatchAnswers answers = new BatchAnswers(new AnswerJson(NeedleFile.shipped()), folder, new FrameFiles.Kept(2));
        java.io.InputStream broken = new java.io.InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException("The disk is gone.");
            }
        };
        org.assertj.core.api.Assertions.assertThatThrownBy(
                        () -> new Batch(answers, terminal).run(broken, new ByteArrayOutputStream()))
                .isInstanceOf(IOException.class);
    }

    @Test
    void aBatchIsNeitherDrawnNorMixedWithACase() throws Exception {
        Path cases = samples.write("cases.ndjson", good);
        assertThat(Invoked.plumbline("compare", "--batch", cases, "--svg", folder.resolve("x.svg"))
                        .code())
                .isEqualTo(ExitCode.BAD_INPUT);
        assertThat(Invoked.plumbline("compare", samples.path.resolve("in-plane.json"), "--batch", cases)
                        .code())
                .isEqualTo(ExitCode.BAD_INPUT);
        assertThat(Invoked.plumbline("compare").code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(Invoked.plumbline("compare", "--batch", folder.resolve("nowhere"))
                        .code())
                .isEqualTo(ExitCode.BAD_INPUT);
    }

    @Test
    void linesAreSplitWhereverTheBufferEnds() throws Exception {
        String text = "a".repeat((1 << 16) - 1) + "\n" + "b".repeat(1 << 16) + "\n\n" + "c".repeat(200) + "\nd";
        LineReader lines = new LineReader(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), 100_000);
        List<Integer> lengths = new ArrayList<>();
        for (var line = lines.next(); line.isPresent(); line = lines.next()) {
            lengths.add(line.get().bytes().length);
            assertThat(line.get().number()).isEqualTo(lengths.size());
        }
        assertThat(lengths).containsExactly((1 << 16) - 1, 1 << 16, 0, 200, 1);
    }
}
