// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.Archive;
import dev.plumbline.archive.HeldObject.Identity;
import dev.plumbline.archive.Reception;
import dev.plumbline.archive.Sender;
import dev.plumbline.archive.WireUid;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.multipart.MultipartReader;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** STOW-RS: objects in, one answer for each. Source: DICOM PS3.18 10.5 and annex I (Store Instances Response Module). */
final class DicomWebStore {
    private static final String DICOM = "application/dicom";
    private static final int MOST_PARTS = 10_000;
    private static final int ALL_KEPT = 200;
    private static final int SOME_KEPT = 202;
    private static final int NONE_KEPT = 409;
    private static final int TOO_LARGE = 413;
    private static final int NO_ROOM = 507;

    /** Failure reasons. Source: DICOM PS3.18 table I.2-2; 0111 duplicate SOP instance: PS3.7 C.5. */
    private static final int REFUSED_OUT_OF_RESOURCES = 0xA700;

    private static final int CANNOT_UNDERSTAND = 0xC000;
    private static final int NOT_OF_THIS_STUDY = 0xC001;
    private static final int DUPLICATE_INSTANCE = 0x0111;
    private static final int CLASS_NOT_SUPPORTED = 0x0122;
    private static final int SYNTAX_NOT_SUPPORTED = 0xC122;

    /** Refused objects whose reasons are told in words; the others have their code alone. Source: design choice. */
    private static final int MOST_WORDS = 10;

    private final Archive archive;

    DicomWebStore(Archive archive) {
        this.archive = archive;
    }

    void store(Context ctx) throws IOException {
        Optional<String> study = Optional.ofNullable(ctx.pathParamMap().get("study"))
                .map(uid -> WireUid.require(uid, "The study in the address"));
        MediaRange type =
                MediaRange.one(Optional.ofNullable(ctx.header("Content-Type")).orElse(""));
        requirePlainDicom(ctx, type);
        requireRoom(type, Math.max(0, ctx.req().getContentLengthLong()));
        List<Reception> receptions =
                type.multipart() ? parts(ctx, type, study) : List.of(archive.receive(ctx.bodyInputStream(), study));
        answer(ctx, receptions);
    }

    private void requireRoom(MediaRange type, long declaredBytes) {
        if (type.multipart()) {
            archive.requireRoom(Sender.HTTP, declaredBytes);
        } else {
            archive.requireRoomForOne(Sender.HTTP, declaredBytes);
        }
    }

    private static void requirePlainDicom(Context ctx, MediaRange type) {
        // Parts say themselves what they are, where a sender leaves the type of all of them out.
        boolean unsaid = type.multipart() && type.parameter("type").isEmpty();
        if (!unsaid && !type.inner().equals(DICOM)) {
            throw new Refusal(new Problem.MediaTypeNotTaken(
                    "", "This route takes DICOM files only.", "Send multipart/related; type=\"application/dicom\"."));
        }
        String encoding = ctx.header("Content-Encoding");
        if (encoding != null && !encoding.equalsIgnoreCase("identity")) {
            throw new Refusal(new Problem.MediaTypeNotTaken(
                    "", "Compressed request bodies are not taken.", "Send the body without Content-Encoding."));
        }
    }

    private List<Reception> parts(Context ctx, MediaRange type, Optional<String> study) throws IOException {
        MultipartReader reader = new MultipartReader(
                ctx.bodyInputStream(), type.parameter("boundary").orElse(""));
        List<Reception> receptions = new ArrayList<>();
        for (Optional<MultipartReader.Part> part = reader.next(); part.isPresent(); part = reader.next()) {
            if (receptions.size() == MOST_PARTS) {
                throw new Refusal(new Problem.UnreadableDocument(
                        "", "The body has more than " + MOST_PARTS + " parts.", "Send fewer objects in one request."));
            }
            receptions.add(receive(part.get(), study));
        }
        if (receptions.isEmpty()) {
            throw new Refusal(new Problem.UnreadableDocument(
                    "", "The multipart body has no part.", "Send at least one DICOM file."));
        }
        return receptions;
    }

    private Reception receive(MultipartReader.Part part, Optional<String> study) {
        String type = MediaRange.one(part.header("content-type").orElse(DICOM)).type();
        return type.equals(DICOM)
                ? archive.receive(part.body(), study)
                : new Reception.Refused(
                        new Problem.MediaTypeNotTaken(
                                "", "A part is no DICOM file.", "Send parts of type application/dicom."),
                        Optional.empty());
    }

    private static void answer(Context ctx, List<Reception> receptions) {
        ArrayNode kept = array();
        ArrayNode failed = array();
        ArrayNode unnamed = array();
        receptions.forEach(reception -> reception.fold(
                held -> kept.add(reference(held.object().identity())
                        .set("00081190", value("UR", DicomWebAddress.relative(ctx, instance(held))))),
                refused -> refused.who().isPresent()
                        ? failed.add(reference(refused.who().get()).set("00081197", reason(refused)))
                        : unnamed.add(JsonNodeFactory.instance.objectNode().set("00081197", reason(refused)))));
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        answer.set("00081190", studyUrl(ctx, receptions));
        putSequence(answer, "00081198", failed);
        putSequence(answer, "00081199", kept);
        putSequence(answer, "0008119A", unnamed);
        warn(ctx, receptions);
        boolean allKept = kept.size() == receptions.size();
        ctx.status(allKept ? ALL_KEPT : kept.isEmpty() ? noneKept(receptions) : SOME_KEPT);
        Utf8.send(ctx, "application/dicom+json", answer.toString());
    }

    /** Where the study is; without a value where nothing was kept, or objects of several studies. Source: I.1, type 2. */
    private static ObjectNode studyUrl(Context ctx, List<Reception> receptions) {
        List<List<String>> studies = receptions.stream()
                .flatMap(reception -> reception instanceof Reception.Kept kept
                        ? Stream.of(kept.object().identity())
                        : Stream.empty())
                .map(DicomWebAddress::study)
                .distinct()
                .toList();
        return studies.size() == 1
                ? value("UR", DicomWebAddress.relative(ctx, studies.get(0)))
                : JsonNodeFactory.instance.objectNode().put("vr", "UR");
    }

    /** A reason is a number; what is wrong and where is said in a header, by the place of the object in the request. */
    private static void warn(Context ctx, List<Reception> receptions) {
        int told = 0;
        for (int i = 0; i < receptions.size() && told < MOST_WORDS; i++) {
            if (receptions.get(i) instanceof Reception.Refused refused) {
                Warning299.add(
                        ctx, "Object " + (i + 1) + ": " + refused.problem().detail());
                told++;
            }
        }
    }

    /** Where there was no room for any, or all are too large, it is not their content that is wrong. */
    private static int noneKept(List<Reception> receptions) {
        if (allRefusedFor(receptions, Problem.NoRoom.class)) {
            return NO_ROOM;
        }
        return allRefusedFor(receptions, Problem.TooLarge.class) ? TOO_LARGE : NONE_KEPT;
    }

    private static boolean allRefusedFor(List<Reception> receptions, Class<? extends Problem> what) {
        return receptions.stream()
                .allMatch(reception ->
                        reception instanceof Reception.Refused refused && what.isInstance(refused.problem()));
    }

    private static List<String> instance(Reception.Kept held) {
        return DicomWebAddress.instance(held.object().identity());
    }

    private static ObjectNode reference(Identity who) {
        ObjectNode reference = JsonNodeFactory.instance.objectNode();
        reference.set("00081150", value("UI", who.sopClassUid()));
        reference.set("00081155", value("UI", who.sopInstanceUid()));
        return reference;
    }

    private static ObjectNode value(String vr, String text) {
        ObjectNode attribute = JsonNodeFactory.instance.objectNode().put("vr", vr);
        attribute.putArray("Value").add(text);
        return attribute;
    }

    private static ObjectNode reason(Reception.Refused refused) {
        ObjectNode attribute = JsonNodeFactory.instance.objectNode().put("vr", "US");
        attribute.putArray("Value").add(code(refused.problem()));
        return attribute;
    }

    private static int code(Problem problem) {
        if (problem instanceof Problem.NoRoom || problem instanceof Problem.TooLarge) {
            return REFUSED_OUT_OF_RESOURCES;
        }
        if (problem instanceof Problem.Conflict) {
            return DUPLICATE_INSTANCE;
        }
        if (problem instanceof Problem.UnsupportedObject) {
            return DicomFile.isOfRefusedSyntax(problem) ? SYNTAX_NOT_SUPPORTED : CLASS_NOT_SUPPORTED;
        }
        return problem instanceof Problem.InvalidValue ? NOT_OF_THIS_STUDY : CANNOT_UNDERSTAND;
    }

    private static void putSequence(ObjectNode answer, String name, ArrayNode items) {
        if (!items.isEmpty()) {
            answer.set(
                    name, JsonNodeFactory.instance.objectNode().put("vr", "SQ").set("Value", items));
        }
    }

    private static ArrayNode array() {
        return JsonNodeFactory.instance.arrayNode();
    }
}
