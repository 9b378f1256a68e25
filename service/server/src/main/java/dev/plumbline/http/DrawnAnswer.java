// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.HeldFrames;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.document.CaseInputs;
import dev.plumbline.drawing.PlanDrawing;
import dev.plumbline.drawing.RasterDrawing;
import dev.plumbline.drawing.Scene;
import dev.plumbline.drawing.SvgDrawing;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import io.javalin.http.Context;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Plans and comparisons as pictures: the drawing over the frame, where there is one, true to the millimetre. */
record DrawnAnswer(HeldFrames frames, CaseDocument document, CaseInputs inputs) {
    static final String JSON = "application/json";
    private static final String SVG = "image/svg+xml";

    /** A scene with the picture of its frame; none for a frame that exists as a stated size only. */
    record Drawn(Scene scene, Optional<BufferedImage> frame) {
        /** @param type as {@link DrawnAnswer#type} gave it, not JSON */
        void send(Context ctx, String type) throws IOException {
            ctx.header("Vary", "Accept");
            if (type.equals(SVG)) {
                ctx.contentType(SVG).result(SvgDrawing.text(scene, frame));
            } else {
                Pictures.send(ctx, RasterDrawing.image(scene, frame));
            }
        }
    }

    /**
     * The media type to answer in; JSON where the sender takes anything.
     *
     * @throws Refusal where it takes none of ours
     */
    static String type(Context ctx) {
        return Accepted.of(ctx)
                .single(JSON, SVG, Pictures.PNG)
                .orElseThrow(() -> Accepted.notAcceptable(JSON, SVG, Pictures.PNG));
    }

    Drawn plan(Comparison comparison) {
        return drawn(PlanDrawing.of(inputs.plan(), comparison), document.frame());
    }

    /**
     * One observation on its own frame beside the plan, or all of the first one's frame; the plan alone where nothing was
     * observed.
     *
     * @param wanted its id; those on the first one's frame where absent
     */
    Drawn comparison(Comparison comparison, Optional<String> wanted) {
        List<ObservationInput> observed = inputs.observations();
        if (observed.isEmpty() && wanted.isEmpty()) {
            return plan(comparison);
        }
        List<PlanDrawing.Made> made = IntStream.range(0, observed.size())
                .filter(i -> wanted.isEmpty()
                        ? onFirstFrame(i)
                        : observed.get(i).marks().id().equals(wanted.get()))
                .mapToObj(i -> new PlanDrawing.Made(observed.get(i), i))
                .toList();
        if (made.isEmpty()) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The case has no such observation.", "Name one by its id, or none for the first frame's."));
        }
        return drawn(
                PlanDrawing.ofObservations(made, inputs.plan(), comparison),
                document.observations().get(made.get(0).index()).frame());
    }

    /** A stated size and scale names no picture, so nothing but the first is known to be on its frame. */
    private boolean onFirstFrame(int index) {
        FrameRef first = document.observations().get(0).frame();
        return index == 0
                || (!(first instanceof FrameRef.Stated)
                        && document.observations().get(index).frame().equals(first));
    }

    private Drawn drawn(Scene scene, FrameRef frame) {
        return new Drawn(scene, frames.image(frame));
    }
}
