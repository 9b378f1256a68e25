// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The letters of the screen furniture, 5 x 7 dots; a blank for what has no drawing. */
final class Glyphs {
    static final int WIDTH = 5;
    static final int HEIGHT = 7;

    private static final Map<Character, List<String>> DRAWN = read();

    private Glyphs() {}

    static boolean isDot(char letter, int column, int row) {
        List<String> rows = DRAWN.get(letter);
        return rows != null && rows.get(row).charAt(column) == '#';
    }

    private static Map<Character, List<String>> read() {
        Map<Character, List<String>> drawn = new HashMap<>();
        List<String> rows = new ArrayList<>();
        for (String line : lines()) {
            if (line.startsWith("= ")) {
                rows = new ArrayList<>();
                drawn.put(line.charAt(2), rows);
            } else if (!line.startsWith(";")) {
                rows.add(line);
            }
        }
        return drawn;
    }

    private static List<String> lines() {
        try (InputStream in = Glyphs.class.getResourceAsStream("glyphs.txt")) {
            if (in == null) {
                throw new IllegalStateException("glyphs.txt is missing from the build.");
            }
            return new BufferedReader(new InputStreamReader(in, StandardCharsets.US_ASCII))
                    .lines()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
