// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.document.StrictJson;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Optional;

/** Bodies of requests: taken in the stated media type only, never compressed, never more than the limit. */
final class Bodies {
    private Bodies() {}

    /** A JSON body as it came. */
    static byte[] json(Context ctx) {
        require(ctx, "application/json");
        try (InputStream in = ctx.bodyInputStream()) {
            byte[] body = in.readNBytes(StrictJson.LIMIT_BYTES + 1);
            if (body.length > StrictJson.LIMIT_BYTES) {
                letFinish(in);
                throw new Refusal(new Problem.TooLarge("", StrictJson.LIMIT_BYTES));
            }
            return body;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Who is still sending when the connection ends does not hear why; so a body that is little too large is read away. */
    private static void letFinish(InputStream in) throws IOException {
        byte[] away = new byte[1 << 16];
        int left = 4 * StrictJson.LIMIT_BYTES;
        for (int read = in.read(away); read > 0 && left > 0; read = in.read(away)) {
            left -= read;
        }
    }

    /** Refuses a body in another type, or a compressed one. */
    static void require(Context ctx, String mediaType) {
        String type = Optional.ofNullable(ctx.header("Content-Type")).orElse("");
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
