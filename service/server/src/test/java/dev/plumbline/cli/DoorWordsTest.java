// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Words that promise too much stand in no text that the doors and their documentation can produce. */
class DoorWordsTest {
    private static final Pattern NEVER = Pattern.compile(
            "\\b(safe(ly)?|clear of|no hazards|correct|optimal|recommended|on target|hit|miss|errors?|accurate|guided|"
                    + "competent|Plumbline confirms|per cent visible)\\b",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");
    private static final Path MAIN = Path.of("src", "main");
    private static final Path DOCS = Path.of("..", "..", "docs");

    @Test
    void noTextOfTheDoorsPromisesTooMuch() throws IOException {
        List<String> texts = new ArrayList<>();
        for (String room : List.of("cli", "http", "document", "app")) {
            try (Stream<Path> sources = Files.list(MAIN.resolve("java/dev/plumbline/" + room))) {
                for (Path source :
                        sources.filter(f -> f.toString().endsWith(".java")).toList()) {
                    texts.addAll(literals(Files.readString(source)));
                }
            }
        }
        assertThat(texts).hasSizeGreaterThan(300);
        assertThat(texts).noneMatch(text -> NEVER.matcher(text).find());
    }

    @Test
    void noPageOfTheDoorsPromisesTooMuch() throws IOException {
        for (Path page : List.of(
                MAIN.resolve("resources/dev/plumbline/http/openapi.json"),
                DOCS.resolve("case.schema.json"),
                DOCS.resolve("case-in-plane.md"),
                DOCS.resolve("case-out-of-plane.md"))) {
            String text = Files.readString(page);
            assertThat(text).isNotBlank();
            Matcher matcher = NEVER.matcher(text);
            assertThat(matcher.find() ? matcher.group() : "")
                    .as(page.toString())
                    .isEmpty();
        }
    }

    @Test
    void theWordsAreFoundWhereTheyStand() {
        assertThat(NEVER.matcher("This is Safe.").find()).isTrue();
        assertThat(NEVER.matcher("a missing field, noHazardsMarked").find()).isFalse();
        assertThat(literals("say(\"one\" + \"t\\\"wo\");")).containsExactly("one", "t\\\"wo");
    }

    private static List<String> literals(String source) {
        return LITERAL.matcher(source).results().map(found -> found.group(1)).toList();
    }
}
