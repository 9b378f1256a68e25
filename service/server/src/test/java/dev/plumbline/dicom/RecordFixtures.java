// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.InventedLimit;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.document.CaseInputs;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.SessionDose;
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
        ((ArrayNode) observation(c, 0).get("shaft")).remove(1);
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
    SPEED_OF_SOUND_STATED(c -> c.withObjectProperty("probe").put("speedOfSoundMPerS", 1480.0)),
    /** Everything that can be said at the bedside, and a time not logged live. */
    BEDSIDE(c -> c.setAll(json(RecordFixtures.BEDSIDE_PARTS)));

    static final Installation INSTALLATION = new Installation(
            "2.25.291234567890123456789012345678901234567",
            "Sample station",
            "Plumbline service",
            "SAMPLE-1",
            "0.1.0",
            "Sample Hospital",
            "GB",
            SightDetail.SUMMARY);
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

    private static final String BEDSIDE_PARTS = """
            {"session": "monday-3", "impression": "As planned; differs from plan by little.",
             "record": {"sightDetail": "full"},
             "frames": [{"frame": {"sopInstanceUid": "2.25.3002", "frameNumber": 3}, "role": "doppler"},
                        {"frame": {"sopInstanceUid": "2.25.3001", "frameNumber": 1}, "role": "other"},
                        {"frame": {"sopInstanceUid": "2.25.3003", "frameNumber": 1}, "role": "spread"}],
             "team": [{"id": "t1", "name": "Roe^Al", "role": "assistant", "grade": "consultant", "supervision": "inRoom"},
                      {"id": "t2", "name": "Poe^An", "role": "a role of the site"}],
             "checks": [{"id": "c1", "check": "survey", "answer": "done", "by": "Roe^Al",
                         "at": "2026-01-05T09:50:00+01:00"},
                        {"id": "c2", "check": "aCheckOfTheSite", "answer": "notDone", "reason": "no time",
                         "by": "Roe^Al", "at": "2026-01-05T09:51:00Z"}],
             "context": {"block": "axillaryBrachialPlexus", "laterality": "right",
                         "operator": {"name": "Sample^Operator", "role": "performer"},
                         "indication": "Hand surgery", "localisation": ["ultrasound", "stimulator"],
                         "patientState": "awake", "position": "supine", "allergiesAsked": "known",
                         "allergyText": "latex", "coagulation": "consideredNoConcern", "baselineNeurology": "normal",
                         "skinPreparation": "chlorhexidine", "ivAccess": "left hand", "monitoring": "ECG",
                         "lots": ["LOT-1", "LOT-2"], "heightCm": 172.5, "ageYears": 44,
                         "weight": {"kg": 70.125, "source": "measured"}, "idealWeightKg": 66, "leanWeightKg": 55.5,
                         "consent": {"answer": "done", "by": "Doe^Jo", "at": "2026-01-05T09:30:00+01:00"},
                         "otherLocalAnaestheticToday": {"answer": "askedGiven", "doses": [
                             {"id": "o1", "drug": "lidocaine", "basis": "salt", "massMg": 40, "vasoconstrictor": true,
                              "route": "infiltration", "at": "2026-01-05T08:00:00+01:00"}]},
                         "orderLaterality": "midline",
                         "sideAnswered": "The image names the other side; the patient was asked."},
             "agents": [{"id": "a1", "drug": "bupivacaine", "basis": "salt", "concentration": {"percent": 0.5},
                         "additives": [{"drug": "epinephrine", "concentration": {"oneIn": 300000}}],
                         "purpose": "block", "route": "perineural", "technique": "single shot",
                         "volumeMl": {"planned": 20, "drawnUp": 20}, "brand": "A brand", "lot": "LOT-3"},
                        {"id": "a2", "corrects": "a1", "drug": "bupivacaine", "basis": "salt",
                         "concentration": {"percent": 0.5}, "purpose": "block", "route": "perineural",
                         "volumeMl": {"drawnUp": 20, "given": 12.3456789, "discarded": 5},
                         "exceeding": {"reason": "considered", "by": "Doe^Jo", "at": "2026-01-05T10:00:00+01:00"}},
                        {"id": "a3", "drug": "clonidine", "concentration": {"microgramsPerMl": 15}}],
             "events": [
               {"id": "e1", "kind": "stopMoment", "names": ["Doe^Jo", "Roe^Al"], "block": "axillaryBrachialPlexus",
                "side": "right", "markSeen": true, "consentSeen": true, "happenedAt": "2026-01-05T10:00:00+01:00",
                "enteredAt": "2026-01-05T10:00:05+01:00", "enteredBy": "Roe^Al"},
               {"id": "e2", "kind": "puncture", "happenedAt": "2026-01-05T10:01:00+01:00",
                "enteredAt": "2026-01-05T10:05:00+01:00", "enteredBy": "Roe^Al", "enteredLater": true},
               {"id": "e3", "kind": "sightStep", "state": "nearPart", "step": "slide",
                "happenedAt": "2026-01-05T10:01:10+01:00", "enteredAt": "2026-01-05T10:01:10+01:00",
                "enteredBy": "Roe^Al"},
               {"id": "e4", "kind": "sightStep", "state": "shaftAndTip", "happenedAt": "2026-01-05T10:01:30+01:00",
                "enteredAt": "2026-01-05T10:01:30+01:00", "enteredBy": "Roe^Al"},
               {"id": "e5", "kind": "aspiration", "blood": false, "happenedAt": "2026-01-05T10:02:00+01:00",
                "enteredAt": "2026-01-05T10:02:00+01:00", "enteredBy": "Roe^Al"},
               {"id": "e6", "kind": "aliquot", "agent": "a1", "volumeMl": 5, "spread": "target",
                "resistance": {"value": 12, "unit": "psi", "device": "in-line gauge"}, "pain": "none",
                "happenedAt": "2026-01-05T10:02:30+01:00", "enteredAt": "2026-01-05T10:02:30+01:00",
                "enteredBy": "Roe^Al"},
               {"id": "e7", "kind": "aliquot", "fluid": "saline", "volumeMl": 1, "hydrolocation": true,
                "resistance": "easy", "happenedAt": "2026-01-05T10:03:00+01:00",
                "enteredAt": "2026-01-05T10:03:00+01:00", "enteredBy": "Roe^Al"},
               {"id": "e8", "kind": "stop", "sign": "tipLost", "happenedAt": "2026-01-05T10:03:10+01:00",
                "enteredAt": "2026-01-05T10:03:10+01:00", "enteredBy": "Roe^Al"},
               {"id": "e9", "kind": "correction", "corrects": "e7", "reason": "wrong button",
                "happenedAt": "2026-01-05T10:03:00+01:00", "enteredAt": "2026-01-05T10:04:00+01:00",
                "enteredBy": "Roe^Al"},
               {"id": "e10", "kind": "needleOut", "happenedAt": "2026-01-05T10:06:00+01:00",
                "enteredAt": "2026-01-05T10:06:00+01:00", "enteredBy": "Roe^Al"},
               {"id": "e11", "kind": "complicationsLookedFor", "by": "Doe^Jo",
                "happenedAt": "2026-01-05T09:12:00Z", "enteredAt": "2026-01-05T09:12:30Z", "enteredBy": "Roe^Al"}],
             "signature": {"name": "Sample^Signer", "organization": "Sample Hospital", "role": "assistant",
                           "time": "2026-01-05T10:15:00+01:00", "incompleteBecause": {"needle": "not looked at"}}}
            """;

    private static ObjectNode json(String text) {
        try {
            return (ObjectNode) JSON.readTree(text);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

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
        return new RecordRevision(document.caseId().orElseThrow(), 1, document, comparison(document), time)
                .with(SessionDose.of(List.of(document), InventedLimit.approved(), time));
    }

    private static Comparison comparison(CaseDocument document) {
        CaseInputs inputs = CaseInputs.of(document, ref -> geometry());
        return Comparison.of(inputs.plan(), inputs.observations());
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
