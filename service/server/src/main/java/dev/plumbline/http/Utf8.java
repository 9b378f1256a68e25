// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;

/**
 * Text under a media type of JSON that the HTTP server does not know as such: it would encode it as ISO 8859-1, and a name
 * in any other script would be lost. Source: RFC 8259 8.1, JSON is UTF-8 and has no charset parameter; DICOM PS3.18 F.2.
 */
final class Utf8 {
    private Utf8() {}

    /** Answers with the text; no charset parameter is added. */
    static void send(Context ctx, String mediaType, String text) {
        ctx.contentType(mediaType).result(text.getBytes(StandardCharsets.UTF_8));
    }
}
