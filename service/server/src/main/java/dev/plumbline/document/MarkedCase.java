// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Shape;
import dev.plumbline.intake.Gathered;
import dev.plumbline.intake.Gathered.FrameKey;
import dev.plumbline.intake.Gathered.Placed;
import dev.plumbline.intake.MarkMeaning;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.PlanMarks;
import dev.plumbline.record.CaseDocument;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Gathered marks as parts of a case document. */
public final class MarkedCase {
    /** Ids of what came from marks of other software begin so. */
    public static final String PREFIX = "viewer-";

    private static final int ID_BYTES = 6;

    /** Within it two people mean the same point. */
    private static final double SAME_PX = 1;

    private final Gathered gathered;

    public MarkedCase(Gathered gathered) {
        this.gathered = gathered;
    }

    /** The identifier of the case that the marks of a study open. */
    public static String caseId(String studyInstanceUid) {
        return PREFIX + shortened(studyInstanceUid);
    }

    /**
     * The frame a new plan is made on: the one with a target; of several the one on which no needle is drawn. Empty where
     * that is none or more than one.
     */
    public Optional<FrameKey> plannedFrame() {
        List<FrameKey> targets = frames(MarkMeaning.TARGET);
        if (targets.size() == 1) {
            return Optional.of(targets.get(0));
        }
        List<FrameKey> withoutNeedle = targets.stream()
                .filter(frame -> of(frame, MarkMeaning.SHAFT).isEmpty()
                        && of(frame, MarkMeaning.TIP).isEmpty())
                .toList();
        return withoutNeedle.size() == 1 ? Optional.of(withoutNeedle.get(0)) : Optional.empty();
    }

    /** How many frames have a target. */
    public int targets() {
        return frames(MarkMeaning.TARGET).size();
    }

    /**
     * A case of nothing but these marks.
     *
     * @param approach empty where nobody has said it: marks do not tell
     */
    public CaseDocument opened(String caseId, Optional<Approach> approach, FrameKey planned) {
        ObjectNode json = object().put("schema", CaseDocument.SCHEMA).put("caseId", caseId);
        approach.ifPresent(way -> json.put("approach", way.word()));
        json.set("frame", frame(planned));
        json.set("marks", marks(planned, object()));
        json.putArray("observations").addAll(observations(planned));
        return CaseJson.read(json, Door.HTTP);
    }

    /**
     * The marks of a plan with those that were gathered in the place of those they replace; hazards and nerves by name.
     *
     * @param standing {@code marks} of the case document
     */
    public ObjectNode marks(FrameKey planned, ObjectNode standing) {
        ObjectNode marks = standing.deepCopy();
        marks.setAll(drawn(planned));
        return withStructures(marks, standing, planned);
    }

    /** The marks that stand, and beside them what was drawn and does not stand yet. */
    public ObjectNode additions(FrameKey planned, ObjectNode standing) {
        ObjectNode marks = drawn(planned);
        marks.setAll(standing);
        for (String field : List.of("hazards", "nerves")) {
            ArrayNode both = marks.withArray(field).deepCopy();
            for (JsonNode structure : structures(field, planned)) {
                if (named(both, structure) == null) {
                    both.add(structure);
                }
            }
            marks.set(field, both);
        }
        return marks;
    }

    /** What was drawn otherwise than it stands, by the word of its meaning and its name. */
    public List<Placed> contradictions(FrameKey planned, PlanMarks standing) {
        return gathered.placed().stream()
                .filter(mark -> mark.frame().equals(planned) && contradicts(mark, standing))
                .toList();
    }

    private static boolean contradicts(Placed mark, PlanMarks standing) {
        return switch (mark.meaning()) {
            case TARGET -> mark.points().get(0).distanceTo(standing.target()) > SAME_PX;
            case SKIN -> !standing.skin().isEmpty() && !near(mark.points(), standing.skin());
            case HAZARD ->
                standing.hazards().stream()
                        .anyMatch(hazard -> hazard.name().equals(mark.name()) && !near(mark, hazard.shape()));
            case NERVE ->
                standing.nerves().stream()
                        .anyMatch(nerve -> nerve.name().equals(mark.name()) && !near(mark, nerve.shape()));
            case SHAFT, TIP -> false;
        };
    }

    private static boolean near(Placed mark, Shape shape) {
        return shape instanceof Shape.Outline outline && near(mark.points(), outline.points());
    }

    private static boolean near(List<PointPx> some, List<PointPx> others) {
        for (int i = 0; i < Math.min(some.size(), others.size()); i++) {
            if (some.get(i).distanceTo(others.get(i)) > SAME_PX) {
                return false;
            }
        }
        return some.size() == others.size();
    }

    private ObjectNode drawn(FrameKey planned) {
        ObjectNode marks = object();
        of(planned, MarkMeaning.TARGET)
                .ifPresent(mark -> marks.set("target", point(mark.points().get(0))));
        of(planned, MarkMeaning.SKIN).ifPresent(mark -> marks.set("skin", points(mark.points())));
        return marks;
    }

    private ObjectNode withStructures(ObjectNode marks, ObjectNode standing, FrameKey planned) {
        for (String field : List.of("hazards", "nerves")) {
            ArrayNode drawn = structures(field, planned);
            ArrayNode merged = JsonNodeFactory.instance.arrayNode();
            for (JsonNode stands : standing.path(field)) {
                if (named(drawn, stands) == null) {
                    merged.add(stands);
                }
            }
            marks.set(field, merged.addAll(drawn));
        }
        return marks;
    }

    private static @Nullable JsonNode named(ArrayNode structures, JsonNode wanted) {
        for (JsonNode structure : structures) {
            if (structure.path("name").equals(wanted.path("name"))) {
                return structure;
            }
        }
        return null;
    }

    private ArrayNode structures(String field, FrameKey planned) {
        MarkMeaning meaning = field.equals("hazards") ? MarkMeaning.HAZARD : MarkMeaning.NERVE;
        ArrayNode structures = JsonNodeFactory.instance.arrayNode();
        gathered.placed().stream()
                .filter(mark -> mark.meaning() == meaning && mark.frame().equals(planned))
                .forEach(mark -> {
                    ObjectNode structure = structures.addObject().put("name", mark.name());
                    if (meaning == MarkMeaning.HAZARD) {
                        structure.put("kind", mark.kind().word());
                    }
                    structure.set("outline", points(mark.points()));
                });
        return structures;
    }

    /** One observation for each frame on which a needle is drawn. */
    public List<ObjectNode> observations(FrameKey planned) {
        List<FrameKey> seen = new ArrayList<>(frames(MarkMeaning.SHAFT));
        frames(MarkMeaning.TIP).stream().filter(frame -> !seen.contains(frame)).forEach(seen::add);
        List<ObjectNode> observations = new ArrayList<>();
        for (FrameKey frame : seen) {
            ObjectNode observation = object().put("id", id(frame));
            if (!frame.equals(planned)) {
                observation.set("frame", frame(frame));
                of(frame, MarkMeaning.TARGET)
                        .ifPresent(mark ->
                                observation.set("target", point(mark.points().get(0))));
                of(frame, MarkMeaning.SKIN).ifPresent(mark -> observation.set("skin", points(mark.points())));
            }
            of(frame, MarkMeaning.SHAFT).ifPresent(mark -> observation.set("shaft", points(mark.points())));
            of(frame, MarkMeaning.TIP)
                    .ifPresent(
                            mark -> observation.set("tip", point(mark.points().get(0))));
            observations.add(observation);
        }
        return observations;
    }

    private static String id(FrameKey frame) {
        return PREFIX + shortened(frame.image()) + "-" + frame.number();
    }

    private List<FrameKey> frames(MarkMeaning meaning) {
        return gathered.placed().stream()
                .filter(mark -> mark.meaning() == meaning)
                .map(Placed::frame)
                .distinct()
                .toList();
    }

    private Optional<Placed> of(FrameKey frame, MarkMeaning meaning) {
        return gathered.placed().stream()
                .filter(mark -> mark.meaning() == meaning && mark.frame().equals(frame))
                .findFirst();
    }

    private static ObjectNode frame(FrameKey frame) {
        return object().put("sopInstanceUid", frame.image()).put("frameNumber", frame.number());
    }

    private static ObjectNode point(PointPx point) {
        return object().put("column", point.column()).put("row", point.row());
    }

    private static ArrayNode points(List<PointPx> points) {
        ArrayNode array = JsonNodeFactory.instance.arrayNode();
        points.forEach(point -> array.add(point(point)));
        return array;
    }

    private static ObjectNode object() {
        return JsonNodeFactory.instance.objectNode();
    }

    private static String shortened(String uid) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(uid.getBytes(StandardCharsets.US_ASCII));
            return HexFormat.of().formatHex(digest, 0, ID_BYTES);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256.", e);
        }
    }
}
