// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.document.CaseInputs;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.plan.Clearance;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.PlanMarks;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Signature;
import java.awt.image.BufferedImage;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Consumer;

/** Records of every shape, all of an invented patient. */
enum RecordFixtures {
    IN_PLANE(c -> {}),
    TIP_NOT_CONFIRMED(c -> {
        observation(c, 0).remove("tipIsTip");
        observation(c, 0).putObject("target").put("column", 318.5).put("row", 361.25);
        observation(c, 0).putObject("midpoint").put("column", 321.5).put("row", 41.25);
    }),
    ONE_FRAME_FOR_BOTH(c -> observation(c, 0).set("frame", c.get("frame").deepCopy())),
    OUT_OF_PLANE(RecordFixtures::outOfPlane),
    DRAFT(c -> {
        c.remove("signature");
        c.withObjectProperty("context").remove("operator");
    }),
    /** Entry outside the image, midline, and a signature at UTC with a fraction of a second. */
    CUT_PATH_MIDLINE_UTC(c -> {
        c.withObjectProperty("context").put("laterality", "midline");
        c.withObjectProperty("intent").put("entryDistanceMm", 45.0);
        c.withObjectProperty("signature").put("time", "2026-01-05T10:15:00.25Z").remove("organization");
    }),
    NEEDLE_NOT_SEEN(c -> {
        observation(c, 0).retain("id", "frame", "tipIsTip");
        ObjectNode second = observation(c, 0).deepCopy().put("id", "obs-2");
        second.putObject("target").put("column", 300).put("row", 350);
        c.withArray("observations").add(second);
    }),
    STRUCTURES(RecordFixtures::structures),
    SPEED_OF_SOUND_STATED(c -> c.withObjectProperty("probe").put("speedOfSoundMPerS", 1480.0));

    static final Installation INSTALLATION = new Installation(
            "2.25.291234567890123456789012345678901234567",
            "Sample station",
            "Plumbline service",
            "SAMPLE-1",
            "0.1.0",
            "Sample Hospital",
            "GB");
    private static final JsonMapper JSON = new JsonMapper();
    private static final String BASE = """
        {"schema": "plumbline-case/1", "approach": "inPlane",
         "frame": {"sopInstanceUid": "2.25.3001", "frameNumber": 1},
         "probe": {"kind": "linear", "footprintMm": 38.0, "midpoint": {"column": 320.0, "row": 40.0},
                   "needleSide": "right"},
         "marks": {"target": {"column": 320.0, "row": 360.0}, "targetKind": "nearNerve",
                   "skin": [{"column": 0.0, "row": 40.0}, {"column": 640.0, "row": 40.5}]},
         "needle": {"gauge": 22, "lengthMm": 80.0, "echogenic": true},
         "intent": {"entryDistanceMm": 17.0},
         "uncertainty": {"markPx": 1.5},
         "observations": [{"id": "obs-1", "phase": "finalTip",
                           "frame": {"sopInstanceUid": "2.25.3002", "frameNumber": 7},
                           "shaft": [{"column": 600.0, "row": 180.0}, {"column": 480.25, "row": 258.0},
                                     {"column": 360.0, "row": 336.0}],
                           "tip": {"column": 322.0, "row": 360.0}, "tipIsTip": true}],
         "context": {"block": "axillaryBrachialPlexus", "laterality": "right",
                     "operator": {"name": "Sample^Operator", "role": "performer"}},
         "signature": {"name": "Sample^Signer", "organization": "Sample Hospital", "role": "assistant",
                       "time": "2026-01-05T10:15:00+01:00"}}
        """;

    @SuppressWarnings("ImmutableEnumChecker") // the changes hold no state
    private final Consumer<ObjectNode> change;

    RecordFixtures(Consumer<ObjectNode> change) {
        this.change = change;
    }

    private static ObjectNode observation(ObjectNode document, int index) {
        return (ObjectNode) document.get("observations").get(index);
    }

    private static void outOfPlane(ObjectNode document) {
        document.put("approach", "outOfPlane");
        document.putObject("intent").put("punctureDistanceMm", 20.0);
        observation(document, 0).put("punctureDistanceMm", 21.5).remove("shaft");
        observation(document, 0).put("tipIsTip", false);
    }

    private static void structures(ObjectNode document) {
        ObjectNode marks = (ObjectNode) document.get("marks");
        ArrayNode hazards = marks.putArray("hazards");
        ObjectNode artery =
                hazards.addObject().put("name", "artery").put("kind", "artery").put("marginMm", 1.0);
        artery.putObject("disc")
                .put("radiusMm", 3.0)
                .putObject("center")
                .put("column", 30.0)
                .put("row", 260.0);
        ObjectNode bone =
                hazards.addObject().put("name", "a bone with a very long name").put("kind", "bone");
        ArrayNode outline = bone.putArray("outline");
        for (double[] point : new double[][] {{0, 560}, {640, 560}, {640, 639}, {0, 639}}) {
            outline.addObject().put("column", point[0]).put("row", point[1]);
        }
        ObjectNode nerve = marks.putArray("nerves").addObject().put("name", "median");
        nerve.putObject("disc")
                .put("radiusMm", 1.5)
                .putObject("center")
                .put("column", 320.0)
                .put("row", 400.0);
    }

    CaseDocument document() {
        try {
            ObjectNode json = (ObjectNode) JSON.readTree(BASE);
            json.put("caseId", "case-" + name());
            change.accept(json);
            return CaseJson.read(json, Door.HTTP);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    RecordRevision revision() {
        return revision(document());
    }

    static RecordRevision revision(CaseDocument document) {
        OffsetDateTime time =
                document.signature().map(Signature::time).orElse(OffsetDateTime.parse("2026-01-05T10:20:00+01:00"));
        return new RecordRevision(document.caseId().orElseThrow(), 1, document, comparison(document), time);
    }

    private static Comparison comparison(CaseDocument document) {
        CaseInputs inputs = CaseInputs.of(withoutStructures(document), ref -> geometry());
        Comparison computed = Comparison.of(inputs.plan(), inputs.observations());
        return document.marks().hazards().isEmpty()
                ? computed
                : new Comparison(
                        withClearances((InPlanePlan) computed.plan(), document.marks()),
                        computed.observations(),
                        computed.deviations());
    }

    /** The engine does not judge structures yet; their place in a record is made up here. */
    private static CaseDocument withoutStructures(CaseDocument document) {
        ObjectNode json = CaseJson.write(document);
        ((ObjectNode) json.get("marks")).retain("target", "targetKind", "skin");
        return CaseJson.read(json, Door.HTTP);
    }

    private static InPlanePlan withClearances(InPlanePlan plan, PlanMarks marks) {
        Reading seen = new Reading.Seen(7.25, 0.5);
        InPlanePlan.Clearances clearances = new InPlanePlan.Clearances(
                marks.hazards().stream()
                        .map(h -> new Clearance(h.name(), seen, seen, false))
                        .toList(),
                marks.nerves().stream()
                        .map(n -> new Clearance(n.name(), seen, seen, false))
                        .toList());
        return new InPlanePlan(
                plan.source(),
                plan.feasible(),
                plan.inBand(),
                plan.readings(),
                plan.line(),
                clearances,
                plan.judgement(),
                plan.choices(),
                plan.waysOut(),
                plan.text());
    }

    RecordSource source() {
        return new RecordSource(revision(), INSTALLATION, frames());
    }

    List<ComposedObject> compose() {
        return new RecordComposer(INSTALLATION).compose(revision(), frames());
    }

    DataSet report() {
        RecordSource source = source();
        return RecordComposer.report(source, FramesUsed.of(source));
    }

    static RecordFrames frames() {
        return ref -> new RecordFrame(
                header(ref.sopInstanceUid()), geometry(), new BufferedImage(640, 640, BufferedImage.TYPE_INT_RGB));
    }

    /** A single frame object, or for UIDs that end in 2 a multi-frame one. */
    static DataSet header(String sopInstanceUid) {
        boolean frames = sopInstanceUid.endsWith("2");
        DataSet header = new DataSet()
                .put(Tag.SPECIFIC_CHARACTER_SET, "ISO_IR 192")
                .put(Tag.SOP_CLASS_UID, "1.2.840.10008.5.1.4.1.1." + (frames ? "3.1" : "6.1"))
                .put(Tag.SOP_INSTANCE_UID, sopInstanceUid)
                .put(Tag.STUDY_INSTANCE_UID, "2.25.1001")
                .put(Tag.SERIES_INSTANCE_UID, "2.25.2001")
                .put(Tag.PATIENT_NAME, "Sample^Invented")
                .put(Tag.PATIENT_ID, "SAMPLE-0001")
                .put(Tag.PATIENT_BIRTH_DATE, "19700101")
                .put(Tag.PATIENT_SEX, "O")
                .put(Tag.STUDY_DATE, "20260105")
                .put(Tag.STUDY_TIME, "095500")
                .put(Tag.ACCESSION_NUMBER, "SAMPLE-A1")
                .putEmpty(Tag.REFERRING_PHYSICIAN_NAME)
                .put(Tag.STUDY_ID, "1")
                .put(Tag.ACQUISITION_DATE, "20260105")
                .put(Tag.ACQUISITION_TIME, "095912.250")
                .put(Tag.MANUFACTURER, "A scanner maker");
        return frames
                ? header.put(Tag.NUMBER_OF_FRAMES, "12").put(Tag.PHOTOMETRIC_INTERPRETATION, "YBR_FULL_422")
                : header.put(Tag.PHOTOMETRIC_INTERPRETATION, "MONOCHROME2")
                        .put(Tag.WINDOW_CENTER, "120", "60")
                        .put(Tag.WINDOW_WIDTH, "200", "100");
    }

    static FrameGeometry geometry() {
        UltrasoundRegion region = new UltrasoundRegion(
                new Region(0, 0, 0, 639, 639),
                1,
                1,
                OptionalInt.empty(),
                3,
                3,
                0.009375,
                0.009375,
                OptionalInt.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
        return new FrameGeometry(640, 640, List.of(region), Optional.empty(), Optional.empty(), "sample");
    }
}
