// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.Archive;
import dev.plumbline.archive.HeldObject;
import dev.plumbline.dicom.BulkData;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.DicomJson;
import dev.plumbline.dicom.Tag;
import dev.plumbline.multipart.MultipartWriter;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** WADO-RS for what is inside objects: metadata, frames as they are stored, bulk data. Source: DICOM PS3.18 10.4, 8.7. */
final class DicomWebParts {
    private static final String OCTETS = "application/octet-stream";
    private static final String PDF = "application/pdf";
    private static final String PIXELS = DicomJson.name(Tag.PIXEL_DATA);
    private static final String PLACE = "[0-9A-F]{8}(\\.[0-9]{1,5}\\.[0-9A-F]{8}){0,16}";
    private static final String FRAMES = "[0-9]{1,6}(,[0-9]{1,6}){0,19999}";

    private final Archive archive;

    DicomWebParts(Archive archive) {
        this.archive = archive;
    }

    void studyMetadata(Context ctx) throws IOException {
        metadata(ctx, archive.held(DicomWebAddress.study(ctx), Optional.empty()));
    }

    void seriesMetadata(Context ctx) throws IOException {
        metadata(ctx, archive.held(DicomWebAddress.study(ctx), DicomWebAddress.series(ctx)));
    }

    void instanceMetadata(Context ctx) throws IOException {
        metadata(ctx, List.of(DicomWebRetrieve.held(archive, ctx)));
    }

    private void metadata(Context ctx, List<HeldObject> objects) throws IOException {
        Accepted.of(ctx).requireJson();
        ArrayNode answer = JsonNodeFactory.instance.arrayNode();
        for (HeldObject object : objects) {
            String bulk = DicomWebAddress.relative(ctx, DicomWebAddress.bulk(object.identity())) + "/";
            ObjectNode attributes = DicomJson.of(archive.open(object), bulk);
            attributes.set(
                    "00083002",
                    JsonNodeFactory.instance
                            .objectNode()
                            .put("vr", "UI")
                            .set("Value", JsonNodeFactory.instance.arrayNode().add(object.transferSyntaxUid())));
            answer.add(attributes);
        }
        Utf8.send(ctx, "application/dicom+json", answer.toString());
    }

    void frames(Context ctx) throws IOException {
        List<Integer> numbers = frameNumbers(ctx);
        frames(ctx, DicomWebRetrieve.held(archive, ctx), numbers);
    }

    /** The frames in the address, at least one; whether there are such is not known yet. */
    static List<Integer> frameNumbers(Context ctx) {
        String list = ctx.pathParam("frames");
        if (!list.matches(FRAMES)) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The list of frames is not readable.", "Write frame numbers from 1, separated by commas."));
        }
        return Arrays.stream(list.split(",")).map(Integer::valueOf).toList();
    }

    private void frames(Context ctx, HeldObject held, List<Integer> numbers) throws IOException {
        DicomFile file = archive.open(held);
        for (MediaRange range : Accepted.of(ctx).ranges()) {
            boolean parts = range.multipart() || range.type().equals("*/*");
            Optional<FrameForm> form = FrameForm.of(range, file);
            if (form.isPresent() && (parts || numbers.size() == 1)) {
                numbers.forEach(number -> requireFrame(file, number));
                FrameForm chosen = form.get();
                new Parts(ctx, held, parts)
                        .send(chosen.type(), chosen.partType(), numbers, number -> chosen.bytes(file, number));
                return;
            }
        }
        throw Accepted.notAcceptable("multipart/related; type=\"application/octet-stream\"; transfer-syntax=*");
    }

    static void requireFrame(DicomFile file, int number) {
        if (number < 1 || number > file.frameCount()) {
            throw new Refusal(new Problem.NotHeld(
                    "",
                    "The object has no frame " + number + "; it has " + file.frameCount() + ".",
                    "Ask for a frame that the object has; they count from 1."));
        }
    }

    void bulk(Context ctx) throws IOException {
        HeldObject held = DicomWebRetrieve.held(archive, ctx);
        String place = ctx.pathParam("place");
        if (!place.matches(PLACE)) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "This is no place of bulk data.", "Use the BulkDataURI of the object's metadata."));
        }
        DicomFile file = archive.open(held);
        if (place.equals(PIXELS)
                && file.frameCount() > 0
                && !file.transferSyntax().encapsulated()) {
            wholePixels(ctx, held, file);
            return;
        }
        if (place.equals(PIXELS)) {
            frames(
                    ctx,
                    held,
                    IntStream.rangeClosed(1, file.frameCount()).boxed().toList());
            return;
        }
        boolean pdf = place.equals(DicomJson.name(Tag.ENCAPSULATED_DOCUMENT))
                && file.header().string(Tag.MIME_TYPE_OF_ENCAPSULATED_DOCUMENT).equals(Optional.of(PDF));
        MediaRange range = Accepted.of(ctx).ranges().stream()
                .filter(each -> each.covers(OCTETS) || (pdf && each.covers(PDF)))
                .findFirst()
                .orElseThrow(() -> Accepted.notAcceptable("multipart/related; type=\"application/octet-stream\""));
        String type = pdf && range.covers(PDF) ? PDF : OCTETS;
        byte[] bytes = BulkData.at(place, file.header());
        new Parts(ctx, held, range.multipart()).send(type, type, List.of(1), number -> bytes);
    }

    /** Plain pixel data are one value, so one part, whatever the number of frames; they are never held at once. */
    private static void wholePixels(Context ctx, HeldObject held, DicomFile file) throws IOException {
        MediaRange range = Accepted.of(ctx).ranges().stream()
                .filter(each -> FrameForm.of(each, file).isPresent())
                .findFirst()
                .orElseThrow(() -> Accepted.notAcceptable("multipart/related; type=\"application/octet-stream\""));
        MultipartWriter.Body frames = out -> {
            long written = 0;
            for (int number = 1; number <= file.frameCount(); number++) {
                byte[] frame = file.storedFrame(number);
                out.write(frame);
                written += frame.length;
            }
            if (written % 2 != 0) {
                out.write(0);
            }
        };
        ctx.disableCompression();
        if (!range.multipart() && !range.type().equals("*/*")) {
            frames.writeTo(ctx.contentType(OCTETS).outputStream());
            return;
        }
        String boundary = Boundary.of(List.of(held));
        ctx.contentType(MultipartWriter.contentType(OCTETS, boundary));
        MultipartWriter writer = new MultipartWriter(ctx.outputStream(), boundary);
        writer.part(OCTETS, frames);
        writer.end();
    }

    /** Where the parts of one object go. */
    private record Parts(Context ctx, HeldObject held, boolean multipart) {
        void send(String type, String partType, List<Integer> numbers, PartBytes bytes) throws IOException {
            ctx.disableCompression();
            if (!multipart) {
                ctx.contentType(partType).result(bytes.of(numbers.get(0)));
                return;
            }
            String boundary = Boundary.of(List.of(held));
            byte[] first = numbers.isEmpty() ? new byte[0] : bytes.of(numbers.get(0));
            ctx.contentType(MultipartWriter.contentType(type, boundary));
            MultipartWriter writer = new MultipartWriter(ctx.outputStream(), boundary);
            for (int i = 0; i < numbers.size(); i++) {
                byte[] part = i == 0 ? first : bytes.of(numbers.get(i));
                writer.part(partType, out -> out.write(part));
            }
            writer.end();
        }
    }

    /** The bytes of a part by its number. */
    private interface PartBytes {
        byte[] of(int number) throws IOException;
    }
}
