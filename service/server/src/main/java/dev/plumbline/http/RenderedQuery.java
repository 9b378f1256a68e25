// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.dicom.Window;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * How a picture is wanted. Source: DICOM PS3.18 8.3.5.
 *
 * @param quality of a JPEG, 1 to 100
 * @param annotations what is written on the picture
 */
record RenderedQuery(Optional<Viewport> viewport, Optional<Window> window, int quality, List<String> annotations) {
    /** Where none is asked for. Source: design choice; what the Java platform takes by itself is 75. */
    private static final int USUAL_QUALITY = 90;

    private static final String QUALITY = "[1-9]\\d?|100";
    private static final Set<String> PROFILES = Set.of("no", "yes", "srgb", "adobergb", "rommrgb", "displayp3");

    static RenderedQuery of(Context ctx) {
        List<String> annotations = new ArrayList<>();
        List<String> asked = Optional.ofNullable(ctx.queryParam("annotation"))
                .map(text -> Arrays.stream(text.split(",")).map(String::strip).toList())
                .orElse(List.of());
        for (String word : asked) {
            if (BurntAnnotation.WORDS.contains(word)) {
                annotations.add(word);
            } else {
                Warning299.add(ctx, "The following annotation values are not supported: " + word);
            }
        }
        warnOfProfile(ctx);
        return new RenderedQuery(
                Optional.ofNullable(ctx.queryParam("viewport")).map(Viewport::of),
                Optional.ofNullable(ctx.queryParam("window")).map(Window::of),
                quality(ctx),
                annotations);
    }

    private static int quality(Context ctx) {
        String text = Optional.ofNullable(ctx.queryParam("quality")).orElse(Integer.toString(USUAL_QUALITY));
        if (!text.matches(QUALITY)) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The quality is not readable.", "Write a whole number from 1 to 100."));
        }
        return Integer.parseInt(text);
    }

    private static void warnOfProfile(Context ctx) {
        String profile = Optional.ofNullable(ctx.queryParam("iccprofile")).orElse("no");
        if (!PROFILES.contains(profile)) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The iccprofile is none that there is.", "Write no, or leave it out."));
        }
        if (!profile.equals("no")) {
            Warning299.add(ctx, "The iccprofile parameter is not supported. The picture has no profile.");
        }
    }
}
