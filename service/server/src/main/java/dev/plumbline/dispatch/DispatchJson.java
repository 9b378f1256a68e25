// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.Part;
import dev.plumbline.archive.Dispatch.State;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Dispatches as the doors show them; one form for all doors. */
public final class DispatchJson {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private DispatchJson() {}

    /** A list with how many stand where. */
    public static ObjectNode list(DispatchDesk desk, List<Dispatch> dispatches) {
        ObjectNode answer = JSON.objectNode();
        ArrayNode items = answer.putArray("dispatches");
        Instant now = desk.clock().instant();
        dispatches.forEach(dispatch -> items.add(summary(dispatch, now)));
        answer.set("counts", counts(desk));
        return answer;
    }

    /** One with its objects. */
    public static ObjectNode whole(DispatchDesk desk, Dispatch dispatch) {
        ObjectNode answer = summary(dispatch, desk.clock().instant());
        ArrayNode objects = answer.putArray("objects");
        for (Part part : dispatch.parts()) {
            objects.addObject()
                    .put("sopInstanceUid", part.sopInstanceUid())
                    .put("state", part.state().word())
                    .put("code", text(part.answer().code()))
                    .put("reason", text(part.answer().words()))
                    .put("altered", part.isAltered())
                    .put("changed", part.changed().toString());
        }
        return answer;
    }

    private static ObjectNode summary(Dispatch dispatch, Instant now) {
        Duration age = Duration.between(dispatch.created(), now);
        ObjectNode item = JSON.objectNode()
                .put("id", dispatch.id())
                .put("state", dispatch.state().word())
                .put("destination", dispatch.addressed().destination())
                .put("recordUid", recordUid(dispatch))
                .put("caseId", dispatch.addressed().caseId())
                .put("revision", dispatch.addressed().revision())
                .put("created", dispatch.created().toString())
                .put("ageSeconds", Math.max(0, age.toSeconds()))
                .put("age", Ages.words(age))
                .put("attempts", dispatch.progress().attempts())
                .put("nextAttempt", text(dispatch.progress().nextAttempt()))
                .put("composed", dispatch.uncomposed().isEmpty())
                .put("code", text(dispatch.lastAnswer().code()))
                .put("reason", text(reason(dispatch)))
                .put("altered", dispatch.isAltered())
                .put("unconfirmed", dispatch.isUnconfirmed())
                .put("released", text(dispatch.released()));
        item.put("url", "/v1/dispatch/" + dispatch.id());
        return item;
    }

    /** Why it waits: what the archive said, or before anything is sent, what keeps the record from being whole. */
    static String reason(Dispatch dispatch) {
        return dispatch.uncomposed()
                .map(DispatchJson::uncomposed)
                .orElse(dispatch.lastAnswer().words());
    }

    private static String uncomposed(String why) {
        return why.isBlank() ? "Its companions are being composed." : "Its companions cannot be composed yet: " + why;
    }

    /** The report is the last of its objects. */
    private static String recordUid(Dispatch dispatch) {
        List<Part> parts = dispatch.parts();
        return parts.isEmpty() ? "" : parts.get(parts.size() - 1).sopInstanceUid();
    }

    private static @Nullable String text(String words) {
        return words.isEmpty() ? null : words;
    }

    private static @Nullable String text(Optional<Instant> time) {
        return time.map(Instant::toString).orElse(null);
    }

    /** How many records stand where, released ones apart. */
    static ObjectNode counts(DispatchDesk desk) {
        ObjectNode counts = JSON.objectNode();
        for (State state : State.values()) {
            counts.put(state.word(), count(desk, state));
        }
        return counts.put(
                "released",
                desk.counts().stream()
                        .filter(Dispatch.Count::released)
                        .mapToInt(Dispatch.Count::dispatches)
                        .sum());
    }

    /** How many stand in a state, released ones apart. */
    static int count(DispatchDesk desk, State state) {
        return desk.counts().stream()
                .filter(count -> count.state() == state && !count.released())
                .mapToInt(Dispatch.Count::dispatches)
                .sum();
    }
}
