// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.plan.Approach;
import dev.plumbline.sight.Advice;
import dev.plumbline.sight.NeedleInside;
import dev.plumbline.sight.NeedleUse;
import dev.plumbline.sight.Part;
import dev.plumbline.sight.Seen;
import dev.plumbline.sight.SightQuestion;
import dev.plumbline.sight.StopSign;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** Where the search for a needle stands, as a question, and the next single action as its answer. */
public final class SightJson {
    private static final int MOST_PASSES = 1000;

    private static final List<String> QUESTION =
            List.of("approach", "state", "signs", "tried", "passes", "heldPastLeadIn", "tooDeep", "geometry");

    private static final List<String> GEOMETRY =
            List.of("leadInMm", "pathMm", "lengthInMm", "seenLengthMm", "angleToSkinDeg", "beamThicknessMm");

    private SightJson() {}

    /** Whether a document is a question, and not a case document. */
    public static boolean isQuestion(JsonNode json) {
        return json.isObject() && json.has("state");
    }

    /**
     * Reads a question: {@code approach}, {@code state}, and what else is known.
     *
     * @throws dev.plumbline.problem.Refusal that names the field and the remedy
     */
    public static SightQuestion question(JsonNode json) {
        Fields fields = new Fields(json, "", QUESTION);
        return new SightQuestion(
                fields.needWord("approach", List.of(Approach.values()), Approach::word),
                fields.needWord("state", List.of(Seen.values()), Seen::word),
                Set.copyOf(fields.words("signs", List.of(StopSign.values()), StopSign::word)),
                fields.texts("tried", Wording.IDENTIFIER),
                fields.whole("passes", 0, MOST_PASSES).orElse(0),
                fields.flag("heldPastLeadIn").orElse(false),
                fields.flag("tooDeep").orElse(false),
                fields.value("geometry")
                        .map(value -> inside(new Fields(value, "/geometry", GEOMETRY)))
                        .orElse(NeedleInside.UNKNOWN));
    }

    private static NeedleInside inside(Fields fields) {
        return new NeedleInside(
                length(fields, "leadInMm"),
                length(fields, "pathMm"),
                length(fields, "lengthInMm"),
                length(fields, "seenLengthMm"),
                fields.number("angleToSkinDeg", Range.ANGLE),
                fields.number("beamThicknessMm", Range.LENGTH));
    }

    private static OptionalDouble length(Fields fields, String name) {
        return fields.number(name, Range.DISTANCE);
    }

    /** The answer: what to do, why, what must not be done, and how much; never to which side. */
    public static ObjectNode of(Advice advice) {
        Stated node = new Stated()
                .put("kind", advice.kind().word())
                .putText("step", advice.step())
                .put("action", advice.says().action())
                .put("reason", advice.says().reason())
                .putTexts("mustNot", advice.says().mustNot())
                .putTexts("signs", advice.signs().stream().map(StopSign::word).toList());
        advice.hands()
                .ifPresent(hands -> node.putText("moves", part(hands.moves()))
                        .putText("keepsStill", part(hands.keepsStill()))
                        .put("needle", hands.needle().word()));
        advice.magnitude().ifPresent(magnitude -> node.put(magnitude.measure().word(), magnitude.value()));
        ObjectNode answer = node.put("passesLeft", advice.passesLeft())
                .put("text", text(advice))
                .node();
        answer.set("cautions", AnswerJson.cautions());
        return answer;
    }

    /** The same with what was asked: where the search stands by a log. */
    public static ObjectNode of(SightQuestion question, Advice advice) {
        ObjectNode answer = of(advice);
        answer.set(
                "asked",
                new Stated()
                        .put("approach", question.approach().word())
                        .put("state", question.seen().word())
                        .putTexts("tried", question.tried())
                        .put("passes", question.passesUnseen())
                        .node());
        return answer;
    }

    private static Optional<String> part(Part part) {
        return Optional.of(part).filter(p -> p != Part.NOTHING).map(Part::word);
    }

    /** In words, for a person who looks up for a moment. */
    public static String text(Advice advice) {
        String mustNot = advice.says().mustNot().stream().collect(Collectors.joining(" "));
        String needle = advice.hands()
                .filter(hands -> hands.needle() == NeedleUse.STILL)
                .map(hands -> " The needle is held still.")
                .orElse("");
        return advice.says().action() + needle + " Because: " + advice.says().reason()
                + (mustNot.isEmpty() ? "" : " " + mustNot);
    }
}
