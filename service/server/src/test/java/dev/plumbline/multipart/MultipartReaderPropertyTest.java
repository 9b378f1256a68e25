// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.multipart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.problem.Refusal;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

class MultipartReaderPropertyTest {
    private static final String BOUNDARY = "xy";

    /** Bytes among which beginnings of a boundary are frequent, none that holds a whole one. */
    @Provide
    Arbitrary<List<byte[]>> parts() {
        Arbitrary<byte[]> tricky = Arbitraries.of('\r', '\n', '-', 'x', 'y', (char) 0, (char) 255)
                .list()
                .ofMaxSize(400)
                .map(MultipartReaderPropertyTest::bytes)
                .filter(bytes -> !text(bytes).contains("\r\n--xy"));
        Arbitrary<byte[]> large =
                Arbitraries.integers().between(65_000, 140_000).map(byte[]::new);
        return Arbitraries.frequencyOf(net.jqwik.api.Tuple.of(9, tricky), net.jqwik.api.Tuple.of(1, large))
                .list()
                .ofMinSize(1)
                .ofMaxSize(5);
    }

    @Property(tries = 300)
    void givesThePartsBackHoweverTheyArrive(
            @ForAll("parts") List<byte[]> parts, @ForAll @IntRange(min = 1, max = 70_000) int chunk)
            throws IOException {
        List<byte[]> read = readAll(new Drip(body(parts), chunk));
        assertThat(read).hasSameSizeAs(parts);
        for (int i = 0; i < parts.size(); i++) {
            assertThat(read.get(i)).isEqualTo(parts.get(i));
        }
    }

    @Property(tries = 300)
    void refusesEveryTruncation(
            @ForAll("parts") List<byte[]> parts, @ForAll @IntRange(min = 3, max = 500) int missing) {
        byte[] whole = body(parts);
        byte[] cut = Arrays.copyOf(whole, Math.max(0, whole.length - missing));
        assertThatThrownBy(() -> readAll(new ByteArrayInputStream(cut))).isInstanceOf(Refusal.class);
    }

    @Property(tries = 100)
    void skipsWhatNobodyReads(@ForAll("parts") List<byte[]> parts) throws IOException {
        MultipartReader reader = new MultipartReader(new ByteArrayInputStream(body(parts)), BOUNDARY);
        int count = 0;
        while (reader.next().isPresent()) {
            count++;
        }
        assertThat(count).isEqualTo(parts.size());
    }

    @Property(tries = 200)
    void endsOnAnyBytes(@ForAll byte[] noise, @ForAll boolean opened) {
        byte[] body = opened ? concat(bytes("--xy\r\n"), noise) : noise;
        try {
            MultipartReader reader = new MultipartReader(new ByteArrayInputStream(body), BOUNDARY);
            long bytes = 0;
            for (Optional<MultipartReader.Part> part = reader.next(); part.isPresent(); part = reader.next()) {
                bytes += part.get().body().readAllBytes().length;
            }
            assertThat(bytes).isLessThanOrEqualTo(noise.length);
        } catch (Refusal refusal) {
            assertThat(refusal.problem().remedy()).isNotBlank();
        } catch (IOException e) {
            throw new AssertionError("bytes in memory cannot fail", e);
        }
    }

    private static List<byte[]> readAll(InputStream in) throws IOException {
        MultipartReader reader = new MultipartReader(in, BOUNDARY);
        List<byte[]> read = new ArrayList<>();
        for (Optional<MultipartReader.Part> part = reader.next(); part.isPresent(); part = reader.next()) {
            assertThat(part.get().header("content-type")).isEqualTo(Optional.of("application/dicom"));
            read.add(part.get().body().readAllBytes());
        }
        return read;
    }

    private static byte[] body(List<byte[]> parts) {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            body.writeBytes(bytes("--xy\r\ncontent-TYPE: application/dicom\r\nX-Other: 1\r\n\r\n"));
            body.writeBytes(part);
            body.writeBytes(bytes("\r\n"));
        }
        body.writeBytes(bytes("--xy--"));
        return body.toByteArray();
    }

    private static byte[] concat(byte[] first, byte[] second) {
        byte[] both = Arrays.copyOf(first, first.length + second.length);
        System.arraycopy(second, 0, both, first.length, second.length);
        return both;
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    private static byte[] bytes(List<Character> characters) {
        StringBuilder text = new StringBuilder();
        characters.forEach(text::append);
        return bytes(text.toString());
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }

    /** Hands out at most so many bytes at a time, as a network does. */
    private static final class Drip extends InputStream {
        private final ByteArrayInputStream bytes;
        private final int chunk;

        Drip(byte[] bytes, int chunk) {
            this.bytes = new ByteArrayInputStream(bytes);
            this.chunk = chunk;
        }

        @Override
        public int read() {
            return bytes.read();
        }

        @Override
        public int read(byte[] into, int offset, int length) {
            return bytes.read(into, offset, Math.min(chunk, length));
        }
    }
}
