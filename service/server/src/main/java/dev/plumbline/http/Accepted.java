// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The media types that the sender of a request takes, in the order stated. Source: DICOM PS3.18 8.3.3, 8.7. */
record Accepted(List<MediaRange> ranges) {
    static Accepted of(Context ctx) {
        // In a query a plus sign stands for itself (RFC 3986), but has been read as a blank by now, as in forms.
        String header = Optional.ofNullable(ctx.queryParam("accept"))
                .map(text -> text.replaceAll("(?<=[a-z0-9]) (?=[a-z0-9])", "+"))
                .or(() -> Optional.ofNullable(ctx.header("Accept")))
                .filter(text -> !text.isBlank())
                .orElse("*/*");
        return new Accepted(MediaRange.list(header));
    }

    /** The first of our types that the sender takes as the whole body. */
    Optional<String> single(String... ours) {
        return ranges.stream()
                .filter(range -> !range.multipart())
                .flatMap(range -> Arrays.stream(ours).filter(range::covers))
                .findFirst();
    }

    void requireJson() {
        if (single("application/dicom+json", "application/json").isEmpty()) {
            throw notAcceptable("application/dicom+json");
        }
    }

    static Refusal notAcceptable(String... ours) {
        return new Refusal(new Problem.NotAcceptable(
                "",
                "What is asked for cannot be given in an accepted media type.",
                "Accept " + Arrays.stream(ours).collect(Collectors.joining(" or ")) + "."));
    }
}
