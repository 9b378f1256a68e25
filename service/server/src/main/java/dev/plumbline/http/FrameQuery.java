// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.dicom.Appearance;
import dev.plumbline.dicom.Window;
import dev.plumbline.document.ScaleText;
import dev.plumbline.geometry.KnownDistance;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import java.util.Optional;

/** The query of a request for a frame: how it is to be shown, and the scale a person states for it. */
final class FrameQuery {
    private static final String OUTSIDE_REGIONS = "outsideRegions";

    private FrameQuery() {}

    /** {@code scale=C1,R1,C2,R2,MM}. */
    static Optional<KnownDistance> scale(Context ctx) {
        return Optional.ofNullable(ctx.queryParam("scale")).map(ScaleText::read);
    }

    /** {@code windowCenter}, {@code windowWidth}, {@code mask}, {@code regions}, {@code scaleBar} and {@code scale}. */
    static Appearance appearance(Context ctx) {
        return new Appearance(window(ctx), masked(ctx), flag(ctx, "regions"), flag(ctx, "scaleBar"), scale(ctx));
    }

    private static Optional<Window> window(Context ctx) {
        String center = ctx.queryParam("windowCenter");
        String width = ctx.queryParam("windowWidth");
        if (center == null && width == null) {
            return Optional.empty();
        }
        if (center == null || width == null) {
            throw refusal("A window has a center and a width; one is missing.", "Give windowCenter and windowWidth.");
        }
        return Optional.of(Window.of(center + "," + width));
    }

    private static boolean masked(Context ctx) {
        String mask = ctx.queryParam("mask");
        if (mask != null && !mask.equals(OUTSIDE_REGIONS)) {
            throw refusal("The mask is not known.", "Write mask=" + OUTSIDE_REGIONS + ", or leave it out.");
        }
        return mask != null;
    }

    private static boolean flag(Context ctx, String name) {
        String text = Optional.ofNullable(ctx.queryParam(name)).orElse("false");
        if (!text.equals("true") && !text.equals("false")) {
            throw refusal("The value of " + name + " is neither true nor false.", "Write " + name + "=true.");
        }
        return text.equals("true");
    }

    private static Refusal refusal(String detail, String remedy) {
        return new Refusal(new Problem.InvalidValue("", detail, remedy));
    }
}
