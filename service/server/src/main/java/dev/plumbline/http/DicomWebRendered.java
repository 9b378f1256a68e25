// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.HeldObject;
import dev.plumbline.dicom.Appearance;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.multipart.MultipartWriter;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * WADO-RS for pictures: frames as JPEG, PNG or GIF, whole or small, one as it is, several as parts. Source: DICOM PS3.18
 * 10.4.1.1.3, 10.4.1.1.4 and 8.7.4.
 */
final class DicomWebRendered {
    private static final int THUMBNAIL_SIDE = 128;
    private static final List<String> TYPES = List.of(Pictures.JPEG, Pictures.PNG, Pictures.GIF);

    private final Archive archive;

    DicomWebRendered(Archive archive) {
        this.archive = archive;
    }

    /** What is shown: a frame of an object. */
    private record Shown(HeldObject object, int frame) {}

    /** In which type, and whether as parts. */
    private record Form(String type, boolean parts) {}

    /** The first frame of an object. */
    void instance(Context ctx) throws IOException {
        send(ctx, List.of(new Shown(image(ctx), 1)));
    }

    void frames(Context ctx) throws IOException {
        HeldObject image = image(ctx);
        send(
                ctx,
                DicomWebParts.frameNumbers(ctx).stream()
                        .map(number -> new Shown(image, number))
                        .toList());
    }

    /** The first frame of every image of a study or series. */
    void group(Context ctx) throws IOException {
        List<Shown> shown = new ArrayList<>();
        for (HeldObject object : archive.held(DicomWebAddress.study(ctx), DicomWebAddress.series(ctx))) {
            if (archive.open(object).isImage()) {
                shown.add(new Shown(object, 1));
            }
        }
        if (shown.isEmpty()) {
            throw noImage();
        }
        send(ctx, shown);
    }

    void thumbnail(Context ctx) throws IOException {
        sendSmall(ctx, new Shown(image(ctx), 1));
    }

    void frameThumbnail(Context ctx) throws IOException {
        HeldObject image = image(ctx);
        sendSmall(ctx, new Shown(image, DicomWebParts.frameNumbers(ctx).get(0)));
    }

    /** Of the first image of a study or series. */
    void groupThumbnail(Context ctx) throws IOException {
        for (HeldObject object : archive.held(DicomWebAddress.study(ctx), DicomWebAddress.series(ctx))) {
            if (archive.open(object).isImage()) {
                sendSmall(ctx, new Shown(object, 1));
                return;
            }
        }
        throw noImage();
    }

    private static Refusal noImage() {
        return new Refusal(new Problem.NotHeld("", "There is no image among these objects.", "Ask for an image."));
    }

    private HeldObject image(Context ctx) throws IOException {
        HeldObject held = DicomWebRetrieve.held(archive, ctx);
        if (!archive.open(held).isImage()) {
            throw Accepted.notAcceptable("application/dicom; this object is no image");
        }
        return held;
    }

    private void send(Context ctx, List<Shown> shown) throws IOException {
        Form form = form(ctx, shown.size() > 1);
        RenderedQuery query = RenderedQuery.of(ctx);
        byte[] first = picture(shown.get(0), query, Optional.empty(), form.type());
        if (!form.parts()) {
            ctx.disableCompression().contentType(form.type()).result(first);
            return;
        }
        for (Shown each : shown) {
            DicomWebParts.requireFrame(archive.open(each.object()), each.frame());
        }
        String boundary = Boundary.of(shown.stream().map(Shown::object).toList());
        ctx.disableCompression().contentType(MultipartWriter.contentType(form.type(), boundary));
        MultipartWriter writer = new MultipartWriter(ctx.outputStream(), boundary);
        for (int i = 0; i < shown.size(); i++) {
            byte[] part = i == 0 ? first : picture(shown.get(i), query, Optional.empty(), form.type());
            writer.part(form.type(), out -> out.write(part));
        }
        writer.end();
    }

    private void sendSmall(Context ctx, Shown shown) throws IOException {
        Form form = form(ctx, false);
        RenderedQuery query = RenderedQuery.of(ctx);
        if (query.viewport().flatMap(Viewport::part).isPresent()) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "A thumbnail shows the whole image.", "Write the viewport as width,height."));
        }
        byte[] small = picture(shown, query, Optional.of(THUMBNAIL_SIDE), form.type());
        ctx.disableCompression().contentType(form.type()).result(small);
    }

    /** One picture is sent as it is unless parts are wanted; several are parts. */
    private static Form form(Context ctx, boolean several) {
        for (MediaRange range : Accepted.of(ctx).ranges()) {
            boolean parts = range.multipart() || (several && range.type().equals("*/*"));
            Optional<String> type = TYPES.stream().filter(range::covers).findFirst();
            if (type.isPresent() && (parts || !several)) {
                return new Form(type.get(), parts);
            }
        }
        throw Accepted.notAcceptable(
                several ? new String[] {"multipart/related; type=\"image/jpeg\""} : TYPES.toArray(String[]::new));
    }

    /** @param side of a picture of which no size is wanted, at most; it is made smaller only */
    private byte[] picture(Shown shown, RenderedQuery query, Optional<Integer> side, String type) throws IOException {
        DicomFile file = archive.open(shown.object());
        DicomWebParts.requireFrame(file, shown.frame());
        BufferedImage whole = file.picture(shown.frame(), Appearance.PLAIN.with(query.window()));
        int most = side.orElse(Viewport.LARGEST_SIDE);
        boolean large = Math.max(whole.getWidth(), whole.getHeight()) > most;
        BufferedImage fitted = query.viewport()
                .or(() -> large ? Optional.of(new Viewport(most, most, Optional.empty())) : Optional.empty())
                .map(viewport -> viewport.of(whole))
                .orElse(whole);
        if (!query.annotations().isEmpty()) {
            BurntAnnotation.draw(fitted, query.annotations(), file, shown.frame());
        }
        return Pictures.encoded(fitted, type, query.quality());
    }
}
