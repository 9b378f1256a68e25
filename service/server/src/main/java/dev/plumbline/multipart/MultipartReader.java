// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.multipart;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Reads a multipart body part by part without ever holding one. Source: RFC 2046 5.1, RFC 2387.
 *
 * <p>{@link #next} closes the part before; a body that ends in the middle of a part is refused.
 */
public final class MultipartReader {
    private static final int BUFFER_BYTES = 1 << 16;
    private static final int HEADER_BYTES = 8192;
    private static final int LONGEST_BOUNDARY = 70;

    private final InputStream in;
    private final byte[] delimiter;
    private final byte[] buffer = new byte[BUFFER_BYTES];
    private int start;
    private int end;
    private boolean exhausted;
    private boolean insidePart = true;

    public MultipartReader(InputStream in, String boundary) {
        if (boundary.isEmpty() || boundary.length() > LONGEST_BOUNDARY) {
            throw malformed("The boundary of the multipart body is missing or longer than 70 characters.");
        }
        this.in = in;
        this.delimiter = ("\r\n--" + boundary).getBytes(StandardCharsets.ISO_8859_1);
        // The first delimiter may open the body; with a line end put before it, it looks like all others.
        buffer[0] = '\r';
        buffer[1] = '\n';
        end = 2;
    }

    /** A part: its header fields by lower-case name, and its bytes, to be read before the next part is asked for. */
    public record Part(Map<String, String> headers, InputStream body) {
        public Part {
            headers = Map.copyOf(headers);
        }

        public Optional<String> header(String name) {
            return Optional.ofNullable(headers.get(name));
        }
    }

    /** What nobody read of the part before, or of the preamble, is of no interest. */
    private void skipRestOfPart() throws IOException {
        byte[] scrap = new byte[BUFFER_BYTES];
        int count = 0;
        while (insidePart && count >= 0) {
            count = read(scrap, 0, scrap.length);
        }
    }

    /** Empty after the last part. */
    public Optional<Part> next() throws IOException {
        skipRestOfPart();
        start += delimiter.length;
        int first = required();
        int second = required();
        if (first == '-' && second == '-') {
            return Optional.empty();
        }
        while (first == ' ' || first == '\t') {
            first = second;
            second = required();
        }
        if (first != '\r' || second != '\n') {
            throw malformed("A boundary of the multipart body is not followed by a line end.");
        }
        Map<String, String> headers = headers();
        insidePart = true;
        return Optional.of(new Part(headers, new PartStream()));
    }

    private Map<String, String> headers() throws IOException {
        Map<String, String> headers = new LinkedHashMap<>();
        int budget = HEADER_BYTES;
        for (String line = line(budget); !line.isEmpty(); line = line(budget)) {
            budget -= line.length();
            int colon = line.indexOf(':');
            if (colon > 0) {
                headers.put(
                        line.substring(0, colon).strip().toLowerCase(Locale.ROOT),
                        line.substring(colon + 1).strip());
            }
        }
        return headers;
    }

    private String line(int budget) throws IOException {
        StringBuilder line = new StringBuilder();
        for (int c = required(); c != '\n'; c = required()) {
            line.append((char) c);
            if (line.length() > budget) {
                throw malformed("The header of a part is longer than " + HEADER_BYTES + " bytes.");
            }
        }
        return line.toString().strip();
    }

    private int required() throws IOException {
        if (start == end) {
            fill();
        }
        if (start == end) {
            throw endsEarly();
        }
        return buffer[start++] & 0xff;
    }

    /** Reads on in the current part; -1 at its end, where {@link #start} then stands at the delimiter. */
    private int read(byte[] into, int offset, int length) throws IOException {
        if (end - start < delimiter.length) {
            fill();
        }
        int found = find();
        if (found == start) {
            insidePart = false;
            return -1;
        }
        int available = found >= 0 ? found - start : end - start - (delimiter.length - 1);
        if (available <= 0) {
            throw endsEarly();
        }
        int count = Math.min(length, available);
        System.arraycopy(buffer, start, into, offset, count);
        start += count;
        return count;
    }

    /** Moves what is left to the front and reads until a delimiter fits or the body ends. */
    private void fill() throws IOException {
        System.arraycopy(buffer, start, buffer, 0, end - start);
        end -= start;
        start = 0;
        while (end < delimiter.length && !exhausted) {
            int count = in.read(buffer, end, buffer.length - end);
            exhausted = count < 0;
            end += Math.max(count, 0);
        }
    }

    private int find() {
        int last = end - delimiter.length;
        for (int i = start; i <= last; i++) {
            if (buffer[i] == '\r' && Arrays.equals(buffer, i, i + delimiter.length, delimiter, 0, delimiter.length)) {
                return i;
            }
        }
        return -1;
    }

    private static Refusal endsEarly() {
        return malformed("The multipart body ends before its last boundary.");
    }

    private static Refusal malformed(String detail) {
        return new Refusal(new Problem.UnreadableDocument("", detail, "Send a whole multipart/related body."));
    }

    private final class PartStream extends InputStream {
        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] into, int offset, int length) throws IOException {
            if (length == 0) {
                return 0;
            }
            return insidePart ? MultipartReader.this.read(into, offset, length) : -1;
        }
    }
}
