// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.Reception;
import dev.plumbline.archive.Sender;
import dev.plumbline.archive.StudyMarks;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;

/** Marks that other software drew: what they mean, what is asked, which case they are in. */
final class MarkRoutes {
    private static final int CREATED = 201;
    private static final int OK = 200;

    private final Archive archive;
    private final StudyMarks marks;

    MarkRoutes(Archive archive, StudyMarks marks) {
        this.archive = archive;
        this.marks = marks;
    }

    void register(RoutesConfig routes) {
        routes.post("/v1/marks", this::take);
        routes.get("/v1/studies/{study}/marks", ctx -> answer(ctx, marks.account(ctx.pathParam("study"))));
        routes.post("/v1/studies/{study}/marks", ctx -> answer(ctx, marks.attach(ctx.pathParam("study"))));
    }

    /** A report or presentation state is taken in as by any other door; its marks are attached, and all are answered for. */
    private void take(Context ctx) {
        Bodies.require(ctx, "application/dicom");
        archive.requireRoomForOne(Sender.HTTP, Math.max(0, ctx.req().getContentLengthLong()));
        Reception.Kept kept = archive.receiveMarks(ctx.bodyInputStream());
        String study = kept.object().identity().studyInstanceUid();
        ctx.status(kept.known() ? OK : CREATED).header("Location", "/v1/studies/" + study + "/marks");
        answer(ctx, marks.account(study));
    }

    private static void answer(Context ctx, StudyMarks.Account account) {
        ctx.contentType("application/json").result(account.json().toString());
    }
}
