// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.Records;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;

/** The header by which a client says that a request is the same one again. The digest covers the address and the body. */
final class IdempotencyKey {
    private static final String VISIBLE_ASCII = "[!-~]{1,255}";

    private IdempotencyKey() {}

    static Optional<Records.Request> of(Context ctx, byte[] body) {
        String key = ctx.header("Idempotency-Key");
        if (key == null) {
            return Optional.empty();
        }
        if (!key.matches(VISIBLE_ASCII)) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The Idempotency-Key cannot be used.", "Give 1 to 255 visible ASCII characters."));
        }
        return Optional.of(new Records.Request(key, digest(ctx.path(), body)));
    }

    private static String digest(String path, byte[] body) {
        try {
            MessageDigest sha256 = MessageDigest.getInstance("SHA-256");
            sha256.update((path + "\n").getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(sha256.digest(body));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256.", e);
        }
    }
}
