// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.document.StrictJson;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;

/** Bodies of requests: taken in the stated media type only, never compressed, never more than the limit. */
final class Bodies {
    private Bodies() {}

    /** A JSON body as it came. */
    static byte[] json(Context ctx) {
        require(ctx, "application/json");
        if (ctx.req().getContentLengthLong() > StrictJson.LIMIT_BYTES) {
            throw new Refusal(new Problem.TooLarge("", StrictJson.LIMIT_BYTES));
        }
        try {
            byte[] body = ctx.bodyInputStream().readNBytes(StrictJson.LIMIT_BYTES + 1);
            if (body.length > StrictJson.LIMIT_BYTES) {
                throw new Refusal(new Problem.TooLarge("", StrictJson.LIMIT_BYTES));
            }
            return body;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Refuses a body in another type, or a compressed one. */
    static void require(Context ctx, String mediaType) {
        String type = Optional.ofNullable(ctx.contentType()).orElse("");
        if (!MediaRange.one(type).type().equals(mediaType)) {
            throw new Refusal(new Problem.MediaTypeNotTaken(
                    "",
                    "This route does not take that type of body.",
                    "Send it with Content-Type: " + mediaType + "."));
        }
        String encoding = ctx.header("Content-Encoding");
        if (encoding != null && !encoding.equalsIgnoreCase("identity")) {
            throw new Refusal(new Problem.MediaTypeNotTaken(
                    "", "Compressed request bodies are not taken.", "Send the body without Content-Encoding."));
        }
    }
}
