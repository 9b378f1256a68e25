// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.HeldObject;
import dev.plumbline.dicom.Appearance;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Window;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** WADO-RS for pictures: a frame as PNG or JPEG, whole or small. Source: DICOM PS3.18 10.4.1.1.3 and 8.7.4. */
final class DicomWebRendered {
    private static final int THUMBNAIL_SIDE = 128;
    private static final int LARGEST_SIDE = 4096;
    private static final Pattern VIEWPORT = Pattern.compile("([1-9]\\d{0,3}),([1-9]\\d{0,3})");

    private final Archive archive;

    DicomWebRendered(Archive archive) {
        this.archive = archive;
    }

    /** The first frame of an object. */
    void instance(Context ctx) throws IOException {
        send(ctx, DicomWebRetrieve.held(archive, ctx), 1, LARGEST_SIDE);
    }

    void frame(Context ctx) throws IOException {
        send(ctx, DicomWebRetrieve.held(archive, ctx), frameNumber(ctx), LARGEST_SIDE);
    }

    void thumbnail(Context ctx) throws IOException {
        send(ctx, DicomWebRetrieve.held(archive, ctx), 1, THUMBNAIL_SIDE);
    }

    void frameThumbnail(Context ctx) throws IOException {
        send(ctx, DicomWebRetrieve.held(archive, ctx), frameNumber(ctx), THUMBNAIL_SIDE);
    }

    /** Of the first image of a study or series. */
    void groupThumbnail(Context ctx) throws IOException {
        List<HeldObject> objects = archive.held(DicomWebAddress.study(ctx), DicomWebAddress.series(ctx));
        for (HeldObject object : objects) {
            if (archive.open(object).isImage()) {
                send(ctx, object, 1, THUMBNAIL_SIDE);
                return;
            }
        }
        throw new Refusal(new Problem.NotHeld("", "There is no image among these objects.", "Ask for an image."));
    }

    private static int frameNumber(Context ctx) {
        String text = ctx.pathParam("frames");
        if (!text.matches("[1-9]\\d{0,5}")) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The frame number is not readable.", "Write one frame number, from 1."));
        }
        return Integer.parseInt(text);
    }

    private void send(Context ctx, HeldObject held, int number, int side) throws IOException {
        String type = Accepted.of(ctx)
                .single(Pictures.PNG, Pictures.JPEG)
                .orElseThrow(() -> Accepted.notAcceptable(Pictures.PNG, Pictures.JPEG));
        Size bound = viewport(ctx).orElse(new Size(side, side));
        DicomFile file = archive.open(held);
        if (!file.isImage()) {
            throw Accepted.notAcceptable("application/dicom; this object is no image");
        }
        DicomWebParts.requireFrame(file, number);
        Optional<Window> window = Optional.ofNullable(ctx.queryParam("window")).map(Window::of);
        Pictures.send(ctx, fitted(file.picture(number, Appearance.PLAIN.with(window)), bound), type);
    }

    private static Optional<Size> viewport(Context ctx) {
        String text = ctx.queryParam("viewport");
        if (text == null) {
            return Optional.empty();
        }
        Matcher matcher = VIEWPORT.matcher(text);
        if (!matcher.matches()) {
            throw new Refusal(new Problem.InvalidValue(
                    "",
                    "The viewport is not readable.",
                    "Write width,height in pixels; parts of an image are not cut out."));
        }
        return Optional.of(new Size(Integer.parseInt(matcher.group(1)), Integer.parseInt(matcher.group(2))));
    }

    /** Made smaller to fit, never larger; the ratio of the sides stays. */
    private static BufferedImage fitted(BufferedImage image, Size bound) {
        double scale = Math.min(
                1, Math.min((double) bound.width() / image.getWidth(), (double) bound.height() / image.getHeight()));
        if (scale == 1) {
            return image;
        }
        int width = Math.max(1, (int) Math.round(image.getWidth() * scale));
        int height = Math.max(1, (int) Math.round(image.getHeight() * scale));
        BufferedImage small = new BufferedImage(width, height, image.getType());
        Graphics2D graphics = small.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        graphics.drawImage(image, 0, 0, width, height, null);
        graphics.dispose();
        return small;
    }

    private record Size(int width, int height) {}
}
