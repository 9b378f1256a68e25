// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The code master file as a page for people; {@link #main} writes {@code docs/codes.md} again after a change. */
final class CodeList {
    static final Path PAGE = Path.of("..", "..", "docs", "codes.md");

    private CodeList() {}

    public static void main(String[] arguments) throws IOException {
        Files.writeString(PAGE, markdown());
    }

    static String markdown() {
        return Stream.concat(Stream.of(head()), Codes.sets().stream().map(CodeList::set))
                .collect(Collectors.joining("\n"));
    }

    private static String head() {
        return "# Codes of a record\n\n"
                + "Made from the data files of `sr-templates`; change them, never this page. Where each stands:"
                + " [templates](templates.md).\n\n"
                + "Our own"
                + " codes"
                + " have"
                + " the designator"
                + " `" + Codes.ownScheme("designator") + "`, scheme UID `"
                + Codes.ownScheme("uid") + "`, version " + Codes.ownScheme("version")
                + ". A code never changes its meaning.\n\n"
                + TemplateFiles.json("codes.json").get("about").asText() + "\n";
    }

    private static String set(Codes.ValueSet set) {
        String concept = set.concept().map(c -> ", values of `" + c + "`").orElse("");
        String about = set.about().isEmpty() ? "" : set.about() + ".\n\n";
        List<Codes.Entry> entries = set.entries();
        return "## " + set.name() + concept + "\n\n" + about
                + "| code | scheme | meaning | word | source |\n|---|---|---|---|---|\n"
                + entries.stream()
                        .map(entry -> row(
                                "`" + entry.code().value() + "`",
                                entry.code().scheme(),
                                entry.code().meaning(),
                                entry.word().orElse(""),
                                entry.source()))
                        .collect(Collectors.joining());
    }

    private static String row(String... cells) {
        return "| " + String.join(" | ", cells) + " |\n";
    }
}
