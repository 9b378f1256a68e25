// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import dev.plumbline.archive.Archive;
import dev.plumbline.archive.HeldFrames;
import dev.plumbline.archive.Reception;
import dev.plumbline.archive.Sender;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.FrameExplanationJson;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.Optional;

/** Frames: taken in as DICOM files, explained, shown. */
final class FrameRoutes {
    private static final int CREATED = 201;
    private static final int OK = 200;

    private final Archive archive;
    private final HeldFrames frames;

    FrameRoutes(Archive archive) {
        this.archive = archive;
        this.frames = new HeldFrames(archive);
    }

    void register(RoutesConfig routes) {
        routes.post("/v1/frames", this::receive);
        routes.get("/v1/frames/{uid}/{number}", this::explain);
        routes.get("/v1/frames/{uid}/{number}/rendered", this::render);
    }

    private void receive(Context ctx) {
        Bodies.require(ctx, "application/dicom");
        archive.requireRoomForOne(Sender.HTTP, Math.max(0, ctx.req().getContentLengthLong()));
        Reception.Kept kept = archive.receiveFrames(ctx.bodyInputStream());
        String uid = kept.object().sopInstanceUid();
        String location = "/v1/frames/" + uid + "/1";
        ctx.status(kept.known() ? OK : CREATED).header("Location", location).contentType("application/json");
        ctx.result(JsonNodeFactory.instance
                .objectNode()
                .put("sopInstanceUid", uid)
                .put("frameCount", frames.object(uid).frameCount())
                .put("location", location)
                .toString());
    }

    private void explain(Context ctx) throws IOException {
        DicomFile file = frames.object(ctx.pathParam("uid"));
        ctx.contentType("application/json")
                .result(FrameExplanationJson.of(file.explain(number(ctx, file), FrameQuery.scale(ctx)))
                        .toString());
    }

    private void render(Context ctx) throws IOException {
        DicomFile file = frames.object(ctx.pathParam("uid"));
        Pictures.send(ctx, file.picture(number(ctx, file), FrameQuery.appearance(ctx)));
    }

    private static int number(Context ctx, DicomFile file) {
        Optional<Integer> number = Optional.of(ctx.pathParam("number"))
                .filter(text -> text.matches("[1-9]\\d{0,5}"))
                .map(Integer::parseInt)
                .filter(n -> n <= file.frameCount());
        return number.orElseThrow(() -> new Refusal(new Problem.NotHeld(
                "", "The object has no such frame.", "Ask for a frame from 1 to " + file.frameCount() + ".")));
    }
}
