// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.core.JsonGenerator;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.document.AnswerJson;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/** One line of a batch answered: a case with its answer, or with what is wrong with it. For several threads at once. */
final class BatchAnswers {
    private static final String URN = "urn:plumbline:problem:";

    private final AnswerJson answers;
    private final Path folder;
    private final FrameFiles frames;

    /** @param folder that names of frame files start from */
    BatchAnswers(AnswerJson answers, Path folder, FrameFiles frames) {
        this.answers = answers;
        this.folder = folder;
        this.frames = frames;
    }

    /**
     * Writes the answer of one line, with a line end.
     *
     * @return how the command would end if this were the only line
     */
    int answer(LineReader.Line line, ByteArrayOutputStream out) throws IOException {
        Optional<String> caseId = Optional.empty();
        ByteArrayOutputStream text = new ByteArrayOutputStream(1 << 15);
        int code;
        try {
            CaseDocument stated = CaseJson.read(line.bytes(), Door.CLI);
            caseId = stated.caseId();
            CaseFiles.Loaded loaded = CaseFiles.load(stated, folder, frames);
            Comparison comparison =
                    Comparison.of(loaded.inputs().plan(), loaded.inputs().observations());
            try (JsonGenerator json = opened(text, line, caseId)) {
                answers.comparison(json, loaded.document(), comparison);
            }
            code = ExitCode.YES;
        } catch (Refusal refusal) {
            refused(text, line, caseId, refusal.problem());
            code = ExitCode.BAD_INPUT;
        } catch (RuntimeException fault) { // one line must not cost the others their answers
            failed(text, line, caseId, Incident.of(fault));
            code = ExitCode.OUR_FAULT;
        }
        text.write('\n');
        text.writeTo(out);
        return code;
    }

    /** Nothing of an answer that had been begun is left. Closing the generator closes the object. */
    private static JsonGenerator opened(ByteArrayOutputStream text, LineReader.Line line, Optional<String> caseId)
            throws IOException {
        text.reset();
        JsonGenerator json = AnswerJson.generator(text);
        json.writeStartObject();
        json.writeNumberField("line", line.number());
        if (caseId.isPresent()) {
            json.writeStringField("caseId", caseId.get());
        }
        return json;
    }

    private static void refused(
            ByteArrayOutputStream text, LineReader.Line line, Optional<String> caseId, Problem problem)
            throws IOException {
        try (JsonGenerator json = opened(text, line, caseId)) {
            json.writeObjectFieldStart("problem");
            json.writeStringField("type", URN + kebab(problem.getClass().getSimpleName()));
            json.writeStringField("detail", problem.detail());
            json.writeStringField("pointer", problem.pointer());
            json.writeStringField("remedy", problem.remedy());
        }
    }

    private static void failed(
            ByteArrayOutputStream text, LineReader.Line line, Optional<String> caseId, Incident incident)
            throws IOException {
        try (JsonGenerator json = opened(text, line, caseId)) {
            json.writeObjectFieldStart("problem");
            json.writeStringField("type", URN + "our-fault");
            json.writeStringField("detail", incident.words());
            json.writeStringField("pointer", "");
            json.writeStringField("remedy", "This is no fault of the line. Please report it with the line.");
            json.writeStringField("incident", incident.number());
        }
    }

    /** {@code MarksCoincide} as "marks-coincide", as the same problem is called over HTTP. */
    static String kebab(String name) {
        return name.replaceAll("(?<=.)([A-Z])", "-$1").toLowerCase(Locale.ROOT);
    }
}
