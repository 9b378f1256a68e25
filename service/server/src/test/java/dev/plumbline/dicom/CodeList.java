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
        return Stream.concat(
                        Stream.of(head()),
                        Stream.concat(
                                Codes.sets().stream().map(CodeList::set),
                                Templates.identifiers().stream().map(CodeList::template)))
                .collect(Collectors.joining("\n"));
    }

    private static String head() {
        return "# Codes and templates of a record\n\n"
                + "Made from the data files of `sr-templates`; change them, never this page.\n\n"
                + "Our own codes have the designator `" + Codes.ownScheme("designator") + "`, scheme UID `"
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

    private static String template(String identifier) {
        String name = TemplateFiles.json(Templates.file(identifier)).get("name").asText();
        String about =
                TemplateFiles.json(Templates.file(identifier)).get("about").asText();
        return "## " + (identifier.startsWith("PL") ? identifier : "TID " + identifier) + " " + name + "\n\n" + about
                + "\n\n| row | relation | type | concept | times | required |\n|---|---|---|---|---|---|\n"
                + Templates.of(identifier).stream().map(CodeList::rows).collect(Collectors.joining());
    }

    private static String rows(Templates.Node node) {
        TemplateRow row = node.row();
        String most = row.times().most() == Integer.MAX_VALUE
                ? "n"
                : Integer.toString(row.times().most());
        return row(
                        ">".repeat(row.nest()) + " " + row.row(),
                        row.relation().map(Relation::text).orElse(""),
                        String.join(" or ", row.types()),
                        row.include()
                                .map(included -> (included.startsWith("PL") ? "" : "TID ") + included)
                                .orElse(row.concepts().stream()
                                        .map(code -> code.value() + " " + code.meaning())
                                        .collect(Collectors.joining(", "))),
                        most,
                        row.times().requirement())
                + node.children().stream().map(CodeList::rows).collect(Collectors.joining());
    }

    private static String row(String... cells) {
        return "| " + String.join(" | ", cells) + " |\n";
    }
}
