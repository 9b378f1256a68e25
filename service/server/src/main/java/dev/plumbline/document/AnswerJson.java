// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.util.TokenBuffer;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.needle.NeedleCatalogue;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.plan.NeedleSuggestion;
import dev.plumbline.plan.Plan;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Cautions;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.function.Consumer;

/** Answers as JSON, the same at every door; each comes with the cautions. For several threads at once. */
public final class AnswerJson {
    private static final ObjectMapper MAPPER = new ObjectMapper(JsonFactory.builder()
            .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
            .build());

    private final NeedleCatalogue needles;

    /**
     * Answers that choose needles from a list.
     *
     * @param needles the list
     */
    public AnswerJson(NeedleCatalogue needles) {
        this.needles = needles;
    }

    /** {@code { "plan", "repeatedMarks", "cautions" }}. */
    public ObjectNode plan(CaseDocument document, Plan plan) {
        return tree(json -> {
            AnswerWriter out = new AnswerWriter(json);
            plan(out, plan, document);
            closing(out, document);
        });
    }

    /** {@code { "plan", "observations", "deviations", "repeatedMarks", "cautions" }}. */
    public ObjectNode comparison(CaseDocument document, Comparison comparison) {
        return tree(json -> comparison(json, document, comparison));
    }

    /** The fields of a comparison, into an object that is open. */
    public void comparison(JsonGenerator json, CaseDocument document, Comparison comparison) {
        AnswerWriter out = new AnswerWriter(json);
        plan(out, comparison.plan(), document);
        out.objects("observations", comparison.observations(), observation -> observation(out, observation));
        out.objects("deviations", comparison.deviations(), deviation -> {
            out.put("id", deviation.id());
            Quantities.eachDifference(out, deviation.readings(), DeviationQuantity.values());
        });
        closing(out, document);
    }

    /** A generator of compact text; numbers are the shortest that read back equal. */
    public static JsonGenerator generator(OutputStream out) throws IOException {
        return new TextGenerator(MAPPER.createGenerator(out));
    }

    /** The cautions as every answer carries them. */
    public static ArrayNode cautions() {
        return JsonNodeFactory.instance.arrayNode().add(Cautions.text());
    }

    private static ObjectNode tree(Consumer<JsonGenerator> fields) {
        try (TokenBuffer buffer = new TokenBuffer(MAPPER, false)) {
            buffer.writeStartObject();
            fields.accept(buffer);
            buffer.writeEndObject();
            try (JsonParser parser = buffer.asParser()) {
                return MAPPER.readTree(parser);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void plan(AnswerWriter out, Plan plan, CaseDocument document) {
        out.object("plan", () -> {
            new PlanJson(out).fields(plan);
            new NeedleChoiceJson(out).fields(NeedleSuggestion.of(plan, document.needle(), needles));
        });
    }

    private static void closing(AnswerWriter out, CaseDocument document) {
        new RepeatedMarksJson(out).field(document);
        out.words("cautions", List.of(Cautions.text()), text -> text);
    }

    private static void observation(AnswerWriter out, Observation observation) {
        out.put("id", observation.id());
        observation.phase().ifPresentOrElse(phase -> out.put("phase", phase.word()), () -> out.putNull("phase"));
        Quantities.each(out, observation.readings(), ObservationQuantity.values());
        Quantities.mark(out, "entryAt", observation.entry());
        observation
                .rotationWords()
                .ifPresentOrElse(words -> out.put("rotationText", words), () -> out.putNull("rotationText"));
        out.words("assumptions", observation.assumptions(), Assumption::word)
                .words("doubts", observation.doubts(), Doubt::word);
    }
}
