// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A case document to which more is appended. What is refused is said at its place in what was sent. */
public final class GrowingCase {
    private static final int TAG_BYTES = 16;
    private static final String TIP_IS_TIP = "tipIsTip";

    /** What a person says of an observation beside the marks on its frame. */
    private static final List<String> SAID = List.of(TIP_IS_TIP, "phase", "punctureDistanceMm", "frame");

    private static final String SCALE = "scale";

    private final ObjectNode json;

    private GrowingCase(ObjectNode json) {
        this.json = json;
    }

    /**
     * One item of a request in the one form that it has here.
     *
     * @param id given by the client; for a part that stands once empty where the client gave none
     * @param content canonical JSON
     */
    public record Item(Optional<String> id, String content) {}

    /** The case as it was opened. */
    public static GrowingCase opened(String canonical) {
        return new GrowingCase((ObjectNode) StrictJson.read(canonical.getBytes(StandardCharsets.UTF_8)));
    }

    /** The same with one more item, which was taken before; one of a list stands in the place of one with its id. */
    public GrowingCase with(CasePart part, String content) {
        ObjectNode next = json.deepCopy();
        JsonNode item = StrictJson.read(content.getBytes(StandardCharsets.UTF_8));
        if (part.list()) {
            ArrayNode list = next.get(part.field()) instanceof ArrayNode there ? there : next.putArray(part.field());
            int place = place(list, item.path("id"));
            if (place < list.size()) {
                list.set(place, item);
            } else {
                list.add(item);
            }
        } else if (item.isNull()) {
            next.remove(part.field());
        } else {
            next.set(part.field(), item);
        }
        return new GrowingCase(next);
    }

    private static int place(ArrayNode list, JsonNode id) {
        int place = 0;
        while (place < list.size()
                && (id.isMissingNode() || !list.get(place).path("id").equals(id))) {
            place++;
        }
        return place;
    }

    public CaseDocument document() {
        return CaseJson.read(json, Door.HTTP);
    }

    public String canonical() {
        return Canonical.text(json);
    }

    /** Entity tag, the same for the same content. Source: RFC 9110, 8.8.3, strong. */
    public String tag() {
        try {
            byte[] digest =
                    MessageDigest.getInstance("SHA-256").digest(canonical().getBytes(StandardCharsets.UTF_8));
            return "\"" + HexFormat.of().formatHex(digest, 0, TAG_BYTES) + "\"";
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256.", e);
        }
    }

    /** What is held of an item with an id; empty where there is none. */
    public Optional<String> held(CasePart part, String id) {
        for (JsonNode item : json.path(part.field())) {
            if (id.equals(item.path("id").textValue())) {
                return Optional.of(Canonical.text(item));
            }
        }
        return Optional.empty();
    }

    /** How many items a list holds. */
    public int count(CasePart part) {
        return json.path(part.field()).size();
    }

    /** What stands in a part that stands once; {@code null} in JSON where nothing does. */
    public String standing(CasePart part) {
        JsonNode there = json.get(part.field());
        return there == null ? "null" : Canonical.text(there);
    }

    /**
     * The items of a request: one object, or a list of them.
     *
     * @throws Refusal that points into the request
     */
    public List<Item> items(CasePart part, JsonNode body) {
        return part.list() ? listed(part, body) : List.of(single(part, body));
    }

    private List<Item> listed(CasePart part, JsonNode body) {
        ArrayNode sent = body instanceof ArrayNode array
                ? array
                : JsonNodeFactory.instance.arrayNode().add(body);
        if (sent.isEmpty()) {
            throw Fields.refusal("", "an object, or a list of at least one");
        }
        for (int i = 0; i < sent.size(); i++) {
            if (sent.get(i).isObject() && sent.get(i).path("id").isMissingNode()) {
                String at = body.isArray() ? "/" + i : "";
                throw new Refusal(new Problem.MissingField(
                        at + "/id", "Give it an id of its own, so that it can be sent again."));
            }
        }
        ObjectNode alone = json.deepCopy();
        alone.set(part.field(), sent);
        JsonNode written = written(alone, part, 0, body.isArray()).path(part.field());
        List<Item> items = new ArrayList<>();
        written.forEach(item -> items.add(new Item(Optional.of(item.path("id").textValue()), Canonical.text(item))));
        return items;
    }

    private Item single(CasePart part, JsonNode body) {
        if (body.isNull()) {
            return new Item(Optional.empty(), "null");
        }
        if (!(body instanceof ObjectNode sent)) {
            throw Fields.refusal(
                    "", "the " + part.field() + " of the case document, with an id of its own if you like");
        }
        ObjectNode value = sent.deepCopy();
        JsonNode id = value.remove("id");
        if (id != null && !(id.isTextual() && Wording.IDENTIFIER.takes(id.textValue()))) {
            throw Fields.refusal("/id", Wording.IDENTIFIER.words());
        }
        ObjectNode alone = json.deepCopy();
        alone.set(part.field(), part == CasePart.APPROACH ? word(part, value) : value);
        JsonNode written = written(alone, part, 0, false).path(part.field());
        if (part == CasePart.FRAME) {
            requireSamePicture(json.path(part.field()), written, "");
        }
        return new Item(
                Optional.ofNullable(id).map(JsonNode::textValue),
                written.isMissingNode() ? "null" : Canonical.text(written));
    }

    /** A part that is one word is sent in an object of one field, so that it can have an id beside it as others do. */
    private static JsonNode word(CasePart part, ObjectNode sent) {
        JsonNode word = sent.get(part.field());
        if (word == null || sent.size() > 1) {
            throw Fields.refusal(
                    "", "an object with the field " + part.field() + ", with an id of its own if you like");
        }
        return word;
    }

    /** Marks were made on a picture; of another one they would say something else. */
    private static void requireSamePicture(JsonNode stands, JsonNode sent, String at) {
        if (!withoutScale(stands).equals(withoutScale(sent))) {
            throw new Refusal(
                    new Problem.Conflict(
                            at,
                            "This is another frame than the one that was marked.",
                            "Name the same frame with the scale that is stated for it; for marks on another frame open a case."));
        }
    }

    private static JsonNode withoutScale(JsonNode frame) {
        return frame instanceof ObjectNode object ? object.deepCopy().without(SCALE) : frame;
    }

    /**
     * An observation that stands, with what a person says of it beside its marks; null takes a thing back.
     *
     * @throws Refusal where no such observation stands, or something else is said
     */
    public ObjectNode said(String observation, JsonNode body) {
        ObjectNode stands = standing(observation)
                .orElseThrow(() -> new Refusal(new Problem.NotHeld(
                        "", "The case has no observation with this id.", "See the case for the ids of its own.")));
        if (!(body instanceof ObjectNode sent) || sent.isEmpty()) {
            throw Fields.refusal("", "an object with one or more of " + String.join(", ", SAID));
        }
        for (Map.Entry<String, JsonNode> said : sent.properties()) {
            String field = said.getKey();
            if (field.equals(CasePart.FRAME.field())) {
                requireSamePicture(stands.path(field), said.getValue(), "/" + field);
            }
            if (!SAID.contains(field)) {
                throw new Refusal(new Problem.UnknownField("/" + field, NearestName.of(field, SAID), SAID));
            }
            if (said.getValue().isNull()) {
                stands.remove(field);
            } else {
                stands.set(field, said.getValue());
            }
        }
        return stands;
    }

    /**
     * An observation drawn anew, with what a person said of the one that stands. Whether the tip is the tip was said of
     * the point marked then; of another point nobody has said it.
     *
     * @param drawn canonical JSON
     */
    public String keepingWhatWasSaid(String drawn) {
        ObjectNode next = (ObjectNode) StrictJson.read(drawn.getBytes(StandardCharsets.UTF_8));
        standing(next.path("id").asText()).ifPresent(before -> {
            for (String field : SAID) {
                boolean sameTip = before.path("tip").equals(next.path("tip"));
                if (before.has(field) && !next.has(field) && (sameTip || !field.equals(TIP_IS_TIP))) {
                    next.set(field, before.get(field));
                }
            }
            JsonNode frame = before.path(CasePart.FRAME.field());
            if (withoutScale(frame).equals(next.path(CasePart.FRAME.field()))) {
                next.set(CasePart.FRAME.field(), frame);
            }
        });
        return Canonical.text(next);
    }

    private Optional<ObjectNode> standing(String observation) {
        return held(CasePart.OBSERVATIONS, observation)
                .map(text -> (ObjectNode) StrictJson.read(text.getBytes(StandardCharsets.UTF_8)));
    }

    private static ObjectNode written(ObjectNode whole, CasePart part, int before, boolean array) {
        try {
            return CaseJson.write(CaseJson.read(whole, Door.HTTP));
        } catch (Refusal refusal) {
            throw inRequest(refusal, part, before, array);
        }
    }

    /**
     * A refusal of the whole case as one of the request.
     *
     * @param before items that the list held before those of the request
     * @param array the request is a list
     */
    public static Refusal inRequest(Refusal refusal, CasePart part, int before, boolean array) {
        String pointer = refusal.problem().pointer();
        String start = "/" + part.field();
        if (!pointer.equals(start) && !pointer.startsWith(start + "/")) {
            return refusal;
        }
        String rest = pointer.substring(start.length());
        if (part.list() && rest.matches("/\\d{1,4}(/.*)?")) {
            int end = rest.indexOf('/', 1) < 0 ? rest.length() : rest.indexOf('/', 1);
            int index = Integer.parseInt(rest.substring(1, end)) - before;
            if (index < 0) {
                return refusal;
            }
            rest = (array ? "/" + index : "") + rest.substring(end);
        }
        return new Refusal(refusal.problem().movedTo(rest));
    }
}
