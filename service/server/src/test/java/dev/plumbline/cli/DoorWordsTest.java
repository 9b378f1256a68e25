// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Words that promise too much stand in no text that the doors and their documentation can produce. */
class DoorWordsTest {
    private static final Pattern NEVER = Pattern.compile(
            "\\b(safe(ly)?|clear of|mm clear|no hazards|no complications|correct|optimal|recommended|on target|hit|miss|errors?|accurate|guided|"
                    + "competent|Plumbline confirms|per cent visible)\\b",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");
    /** Of JavaScript, in any of its three kinds of quotes. */
    private static final Pattern SCRIPT_LITERAL =
            Pattern.compile("(?s)(?<quote>['\"`])((?:(?!\\k<quote>)[^\\\\]|\\\\.)*)\\k<quote>");

    private static final Path MAIN = Path.of("src", "main");
    private static final Path DOCS = Path.of("..", "..", "docs");

    /**
     * Where a word stands for something else: a statistic's name, the cautions' own warning, the name of the trade, a code
     * of the standard.
     */
    private static final Pattern MEANT_OTHERWISE = Pattern.compile(
            "technical error|not a safe dose|ultrasound-guided|\"111492\", \"meaning\": \"No complications\"|"
                    + "`111492` \\| DCM \\| No complications|`DCM 111492` No complications|EVT-CORRECT",
            Pattern.CASE_INSENSITIVE);

    private static List<Path> files(Path folder, String... endings) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .filter(file -> Stream.of(endings).anyMatch(file.toString()::endsWith))
                    .toList();
        }
    }

    private static boolean promises(String text) {
        return NEVER.matcher(MEANT_OTHERWISE.matcher(text).replaceAll("")).find();
    }

    @Test
    void noTextOfTheProgramPromisesTooMuch() throws IOException {
        List<String> texts = new ArrayList<>();
        for (Path room : List.of(
                MAIN.resolve("java"), Path.of("../core/src/main/java"), Path.of("../../dicom-samples/src/main/java"))) {
            for (Path source : files(room, ".java")) {
                String code = Files.readString(source)
                        .replaceAll("(?s)/\\*.*?\\*/", "")
                        .replaceAll("'.'", "");
                texts.addAll(literals(code));
            }
        }
        assertThat(texts).hasSizeGreaterThan(2000);
        assertThat(texts).noneMatch(DoorWordsTest::promises);
    }

    @Test
    void noPageAndNoDataFilePromisesTooMuch() throws IOException {
        List<Path> pages = new ArrayList<>(files(MAIN.resolve("resources"), ".json", ".txt", ".html"));
        pages.addAll(files(Path.of("../core/src/main/resources"), ".txt", ".json"));
        pages.addAll(files(Path.of("../../sr-templates/src/main/resources"), ".json"));
        pages.addAll(files(DOCS, ".json", ".svg"));
        pages.addAll(files(DOCS, ".md"));
        pages.add(Path.of("../../README.md"));
        assertThat(pages).hasSizeGreaterThan(50);
        for (Path page : pages) {
            assertThat(Files.readString(page).lines()).as(page.toString()).noneMatch(DoorWordsTest::promises);
        }
    }

    /** What the service's own pages say as they run; a word alone in small letters is a name for programs. */
    @Test
    void noScriptOfAPagePromisesTooMuch() throws IOException {
        List<String> texts = new ArrayList<>();
        for (Path script : files(MAIN.resolve("resources"), ".js")) {
            String code =
                    Files.readString(script).replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("(?m)(^|\\s)//.*$", "");
            SCRIPT_LITERAL
                    .matcher(code)
                    .results()
                    .map(found -> found.group(2).replaceAll("\\$\\{[^}]*\\}", " "))
                    .filter(text -> !text.matches("[a-z-]*"))
                    .forEach(texts::add);
        }
        assertThat(texts).hasSizeGreaterThan(500);
        assertThat(texts).noneMatch(DoorWordsTest::promises);
    }

    /** Whatever is asked, what comes out is read once more. */
    @Test
    void noAnswerPromisesTooMuch(@TempDir Path folder) throws Exception {
        SampleFolder samples = new SampleFolder(folder);
        for (String name : List.of("in-plane.json", "proposal.json", "out-of-plane.json")) {
            Path svg = folder.resolve(name + ".svg");
            for (Invoked said : List.of(
                    Invoked.plumbline("plan", folder.resolve(name)),
                    Invoked.plumbline("compare", folder.resolve(name), "--svg", svg),
                    Invoked.plumbline("compare", folder.resolve(name), "--json"),
                    Invoked.plumbline(
                            "plan",
                            samples.write(
                                    "short.json",
                                    samples.text(name).replaceAll("\"lengthMm\" *: *[0-9.]+", "\"lengthMm\": 12"))))) {
                assertThat(said.out()).isNotBlank();
                assertThat(promises(said.out().replaceAll("\\s+", " ")))
                        .as(said.out())
                        .isFalse();
            }
            assertThat(promises(Files.readString(svg).replaceAll("<[^>]*>", " ")))
                    .as(name)
                    .isFalse();
        }
    }

    @Test
    void theWordsAreFoundWhereTheyStand() {
        assertThat(NEVER.matcher("This is Safe.").find()).isTrue();
        assertThat(NEVER.matcher("nerve 1, 3.0 mm clear").find()).isTrue();
        assertThat(NEVER.matcher("a missing field, noHazardsMarked").find()).isFalse();
        assertThat(literals("say(\"one\" + \"t\\\"wo\");")).containsExactly("one", "t\\\"wo");
    }

    private static List<String> literals(String source) {
        return LITERAL.matcher(source).results().map(found -> found.group(1)).toList();
    }
}
