// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.HeldObject;
import dev.plumbline.multipart.MultipartWriter;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * WADO-RS for whole objects: as they are stored, byte for byte; nothing is transcoded. Source: DICOM PS3.18 10.4, 8.7.
 */
final class DicomWebRetrieve {
    private static final String DICOM = "application/dicom";

    private final Archive archive;

    DicomWebRetrieve(Archive archive) {
        this.archive = archive;
    }

    void study(Context ctx) throws IOException {
        send(ctx, archive.held(DicomWebAddress.study(ctx), Optional.empty()));
    }

    void series(Context ctx) throws IOException {
        send(ctx, archive.held(DicomWebAddress.study(ctx), DicomWebAddress.series(ctx)));
    }

    void instance(Context ctx) throws IOException {
        send(ctx, List.of(held(archive, ctx)));
    }

    /** The object in the address; study and series, where named, must be its own. */
    static HeldObject held(Archive archive, Context ctx) {
        HeldObject object = archive.held(DicomWebAddress.instance(ctx));
        Optional<String> series = DicomWebAddress.series(ctx);
        boolean there = object.identity().studyInstanceUid().equals(DicomWebAddress.study(ctx))
                && series.orElse(object.identity().seriesInstanceUid())
                        .equals(object.identity().seriesInstanceUid());
        if (!there) {
            throw new Refusal(
                    new Problem.NotHeld("", "The object is not in this study and series.", "Search for where it is."));
        }
        return object;
    }

    private void send(Context ctx, List<HeldObject> objects) throws IOException {
        MediaRange range = Accepted.of(ctx).ranges().stream()
                .filter(each -> each.covers(DICOM))
                .filter(each -> each.multipart() || each.type().equals("*/*") || objects.size() == 1)
                .filter(each -> objects.stream().allMatch(object -> each.coversSyntax(object.transferSyntaxUid())))
                .findFirst()
                .orElseThrow(() ->
                        Accepted.notAcceptable("multipart/related; type=\"application/dicom\"; transfer-syntax=*"));
        List<Path> files = objects.stream().map(archive::file).toList();
        boolean alone = range.type().equals(DICOM);
        ctx.disableCompression();
        if (alone) {
            ctx.contentType(partType(objects.get(0)));
            Files.copy(files.get(0), ctx.outputStream());
            return;
        }
        String boundary = Boundary.of(objects);
        ctx.contentType(MultipartWriter.contentType(DICOM, boundary));
        parts(objects, files, new MultipartWriter(ctx.outputStream(), boundary));
    }

    private static void parts(List<HeldObject> objects, List<Path> files, MultipartWriter writer) throws IOException {
        for (int i = 0; i < objects.size(); i++) {
            Path file = files.get(i);
            writer.part(partType(objects.get(i)), (OutputStream out) -> Files.copy(file, out));
        }
        writer.end();
    }

    private static String partType(HeldObject object) {
        return DICOM + ";transfer-syntax=" + object.transferSyntaxUid();
    }
}
