// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.geometry.KnownDistance;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.observation.Phase;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Intent;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.FrameRole;
import dev.plumbline.record.KeptFrame;
import dev.plumbline.record.ObservedFrame;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Reads the case as a whole: schema, frames, intent and observations; the parts have readers of their own. */
final class CaseReader {
    /** Columns and Rows are unsigned shorts. Source: DICOM PS3.3 C.7.6.3.1. */
    private static final int MOST_PIXELS = 65_535;

    private final Door door;

    CaseReader(Door door) {
        this.door = door;
    }

    CaseDocument read(JsonNode json) {
        if (!json.isObject()) {
            throw new Refusal(new Problem.UnreadableDocument("", "The document is not a JSON object.", "Send one."));
        }
        checkSchema(json);
        Fields fields = new Fields(json, "", CaseObject.CASE);
        Optional<Approach> approach = fields.word("approach", List.of(Approach.values()), Approach::word);
        FrameRef frame = frame(fields.object("frame", CaseObject.FRAME)
                .orElseThrow(() -> fields.missing("frame", "the frame that the marks were made on")));
        return FrameScales.shared(new CaseDocument(
                fields.text("caseId", Wording.IDENTIFIER),
                approach,
                frame,
                EquipmentReader.probe(fields),
                MarksReader.marks(fields),
                EquipmentReader.needle(fields),
                fields.object("intent", CaseObject.INTENT)
                        .map(intent -> intent(
                                intent,
                                approach.orElseThrow(() -> new Refusal(new Problem.MissingField(
                                        fields.pointer("approach"), CaseDocument.SAY_THE_APPROACH))))),
                LimitsReader.constraints(fields),
                LimitsReader.uncertainty(fields),
                observations(fields, frame),
                ContextReader.context(fields),
                BedsideReader.bedside(fields).withFrames(kept(fields)),
                ContextReader.signature(fields)));
    }

    /** Before all else: another version may know other fields. */
    private static void checkSchema(JsonNode json) {
        JsonNode schema = json.path("schema");
        String remedy = "Give \"schema\": \"" + CaseDocument.SCHEMA + "\".";
        if (schema.isMissingNode() || schema.isNull()) {
            throw new Refusal(new Problem.MissingField("/schema", remedy));
        }
        if (!CaseDocument.SCHEMA.equals(schema.textValue())) {
            throw new Refusal(new Problem.UnreadableDocument(
                    "/schema", "The schema is not one that this version reads.", remedy));
        }
    }

    private FrameRef frame(Fields fields) {
        List<String> forms = List.of("file", "sopInstanceUid", "columns");
        List<String> given = forms.stream().filter(fields::has).toList();
        if (given.size() != 1) {
            throw fields.contradiction(
                    "A frame is named by exactly one of file, sopInstanceUid, or columns with rows and scale.",
                    "Give one of the three.");
        }
        boolean stated = fields.has("columns");
        for (String other : stated ? List.of("frameNumber", "scale") : List.of("rows", "mmPerColumn", "mmPerRow")) {
            if (fields.has(other)) {
                throw fields.contradiction(
                        "The fields " + given.get(0) + " and " + other + " do not go together.",
                        "Remove " + fields.pointer(other) + ".");
            }
        }
        return stated ? stated(fields) : instance(fields);
    }

    private static FrameRef stated(Fields fields) {
        return new FrameRef.Stated(
                fields.needWhole("columns", 1, MOST_PIXELS),
                fields.needWhole("rows", 1, MOST_PIXELS),
                fields.needNumber("mmPerColumn", Range.PIXEL_SIZE),
                fields.needNumber("mmPerRow", Range.PIXEL_SIZE));
    }

    /** Frames that are kept for what they show; a record needs images, so a size and scale alone are none. */
    private List<KeptFrame> kept(Fields document) {
        Set<FrameRef> named = new HashSet<>();
        return document.objects("frames", CaseObject.KEPT_FRAME, fields -> {
            FrameRef frame = fields.object("frame", CaseObject.KEPT_IMAGE)
                    .map(this::image)
                    .orElseThrow(() -> fields.missing("frame", "the frame that is kept"));
            if (!named.add(frame)) {
                throw new Refusal(new Problem.InvalidValue(
                        fields.pointer("frame"), "This frame is listed already.", "List each frame once."));
            }
            return new KeptFrame(frame, fields.needWord("role", List.of(FrameRole.values()), FrameRole::word));
        });
    }

    private FrameRef image(Fields fields) {
        if (fields.has("file") == fields.has("sopInstanceUid")) {
            throw fields.contradiction(
                    "A frame that is kept is named by exactly one of file and sopInstanceUid.", "Give one of the two.");
        }
        return instance(fields, Optional.empty());
    }

    private FrameRef instance(Fields fields) {
        return instance(fields, fields.object("scale", CaseObject.SCALE).map(CaseReader::scale));
    }

    private FrameRef instance(Fields fields, Optional<KnownDistance> scale) {
        int frameNumber = fields.whole("frameNumber", 1, Integer.MAX_VALUE).orElse(1);
        Optional<String> file = fields.text("file", Wording.PATH);
        if (file.isEmpty()) {
            return new FrameRef.Held(fields.needText("sopInstanceUid", Wording.UID), frameNumber, scale);
        }
        if (door == Door.HTTP) {
            throw new Refusal(new Problem.InvalidValue(
                    fields.pointer("file"),
                    "A frame cannot be named by a file over HTTP.",
                    "Send the frame with POST /v1/frames and give its sopInstanceUid here."));
        }
        return new FrameRef.File(file.get(), frameNumber, scale);
    }

    /** What only the frame can tell, such as whether the points are on it, is checked there. */
    private static KnownDistance scale(Fields fields) {
        return new KnownDistance(
                fields.needPoint("from"), fields.needPoint("to"), fields.needNumber("distanceMm", Range.LENGTH));
    }

    private static Intent intent(Fields fields, Approach approach) {
        List<String> given =
                CaseObject.INTENT.fields().stream().filter(fields::has).toList();
        if (given.size() != 1) {
            throw fields.contradiction(
                    given.isEmpty() ? "The intent states no path." : "The intent states more than one path.",
                    "Give exactly one of " + String.join(", ", CaseObject.INTENT.fields()) + ", or no intent.");
        }
        String field = given.get(0);
        if (field.equals("punctureDistanceMm") == (approach == Approach.IN_PLANE)) {
            throw new Refusal(new Problem.ContradictoryFields(
                    fields.pointer(field),
                    "The intent " + field + " does not go with the approach " + approach.word() + ".",
                    approach == Approach.IN_PLANE
                            ? "Give entryDistanceMm, angleToSkinDeg or entry, or the approach outOfPlane."
                            : "Give punctureDistanceMm, or the approach inPlane."));
        }
        return intent(fields, field);
    }

    private static Intent intent(Fields fields, String field) {
        return switch (field) {
            case "entryDistanceMm" -> new Intent.EntryDistance(fields.needNumber(field, Range.SIGNED));
            case "angleToSkinDeg" -> new Intent.AngleToSkin(fields.needNumber(field, Range.ANGLE));
            case "punctureDistanceMm" -> new Intent.PunctureDistance(fields.needNumber(field, Range.DISTANCE));
            default -> new Intent.EntryMark(fields.point(field).orElseThrow());
        };
    }

    private List<ObservedFrame> observations(Fields fields, FrameRef planned) {
        Set<String> ids = new HashSet<>();
        return fields.list("observations", (item, at) -> {
            ObservedFrame observation = observation(new Fields(item, at, CaseObject.OBSERVATION), planned);
            if (!ids.add(observation.marks().id())) {
                throw new Refusal(new Problem.InvalidValue(
                        at + "/id", "Two observations have the same id.", "Give each observation an id of its own."));
            }
            return observation;
        });
    }

    private ObservedFrame observation(Fields fields, FrameRef planned) {
        String position = fields.pointer().substring(fields.pointer().lastIndexOf('/') + 1);
        FrameRef frame =
                fields.object("frame", CaseObject.FRAME).map(this::frame).orElse(planned);
        List<PointPx> shaft = fields.points("shaft", 2);
        return new ObservedFrame(
                new ObservationMarks(
                        fields.text("id", Wording.IDENTIFIER).orElse("obs-" + (Integer.parseInt(position) + 1)),
                        fields.word("phase", List.of(Phase.values()), Phase::word),
                        shaft,
                        fields.point("tip"),
                        fields.flag("tipIsTip"),
                        fields.point("midpoint"),
                        fields.point("target"),
                        fields.points("skin", 2),
                        fields.number("punctureDistanceMm", Range.DISTANCE)),
                frame);
    }
}
