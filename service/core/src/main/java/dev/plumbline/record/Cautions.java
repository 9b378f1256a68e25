// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The words that go with everything the program shows; one resource file, word for word everywhere. */
public final class Cautions {
    private static final String TEXT = read();

    private Cautions() {}

    public static String text() {
        return TEXT;
    }

    private static String read() {
        try (InputStream in = Cautions.class.getResourceAsStream("cautions.txt")) {
            if (in == null) {
                throw new IllegalStateException("cautions.txt is missing from the build.");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
