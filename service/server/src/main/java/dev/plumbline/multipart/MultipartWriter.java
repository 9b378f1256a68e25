// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.multipart;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** Writes a multipart/related body part by part. Source: RFC 2046 5.1, RFC 2387. */
public final class MultipartWriter {
    private final OutputStream out;
    private final String boundary;

    /** @param boundary a text that occurs in no part; derived from the parts' digests it cannot be foreseen by a part */
    public MultipartWriter(OutputStream out, String boundary) {
        this.out = out;
        this.boundary = boundary;
    }

    public static String contentType(String partType, String boundary) {
        return "multipart/related; type=\"" + partType + "\"; boundary=" + boundary;
    }

    public void part(String contentType, Body body) throws IOException {
        write("--" + boundary + "\r\nContent-Type: " + contentType + "\r\n\r\n");
        body.writeTo(out);
        write("\r\n");
    }

    public void end() throws IOException {
        write("--" + boundary + "--\r\n");
        out.flush();
    }

    private void write(String text) throws IOException {
        out.write(text.getBytes(StandardCharsets.US_ASCII));
    }

    /** Bytes that know where to go. */
    public interface Body {
        void writeTo(OutputStream out) throws IOException;
    }
}
