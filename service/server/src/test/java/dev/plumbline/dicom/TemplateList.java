// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The template files as a page for people; {@link #main} writes {@code docs/templates.md} again after a change. */
final class TemplateList {
    static final Path PAGE = Path.of("..", "..", "docs", "templates.md");

    private TemplateList() {}

    public static void main(String[] arguments) throws IOException {
        Files.writeString(PAGE, markdown());
    }

    static String markdown() {
        return Stream.concat(Stream.of(head()), Templates.identifiers().stream().map(TemplateList::template))
                .collect(Collectors.joining("\n"));
    }

    private static String head() {
        return "# Templates of a record\n\n"
                + "Made from the data files of `sr-templates`; change them, never this page. The report is written and"
                + " `plumbline check` judges by these rows; what each code means: [codes](codes.md).\n\n"
                + "A row below another has one `>` more. VM: how often; M required, U not, MC and UC under the condition."
                + " `DCM`, `SCT`, `UCUM` are codes of the standard's schemes, `99PLUMB` is ours. Templates of the standard"
                + " (TID) have the rows we use, with the standard's row numbers; PL1 and PL2 are ours.\n\n"
                + Templates.identifiers().stream()
                        .map(identifier -> "- [" + title(identifier) + "](#" + anchor(identifier) + ")\n")
                        .collect(Collectors.joining());
    }

    private static JsonNode file(String identifier) {
        return TemplateFiles.json(Templates.file(identifier));
    }

    private static String name(String identifier) {
        return identifier.startsWith("PL") ? identifier : "TID " + identifier;
    }

    private static String title(String identifier) {
        return name(identifier) + " " + file(identifier).get("name").asText();
    }

    /** As GitHub makes them of headings. */
    private static String anchor(String identifier) {
        return title(identifier)
                .toLowerCase(java.util.Locale.ROOT)
                .replaceAll("[^a-z0-9 -]", "")
                .replace(' ', '-');
    }

    private static String template(String identifier) {
        StringBuilder rows = new StringBuilder();
        for (JsonNode row : file(identifier).get("rows")) {
            rows.append(row(row));
        }
        return "## " + title(identifier) + "\n\n"
                + file(identifier).get("about").asText()
                + "\n\n| row | relation | type | concept or template | VM | required | condition | values | remarks |\n"
                + "|---|---|---|---|---|---|---|---|---|\n" + rows;
    }

    private static String row(JsonNode row) {
        List<String> cells = List.of(
                ">".repeat(row.get("nest").asInt()) + " " + row.get("row").asText(),
                row.get("relation").asText(),
                String.join(" or ", texts(row, "type")),
                row.has("template")
                        ? name(row.get("template").asText())
                        : texts(row, "concept").stream().map(TemplateList::code).collect(Collectors.joining("; ")),
                row.get("multiplicity").asText(),
                row.get("requirement").asText(),
                Stream.concat(texts(row, "condition").stream(), texts(row, "test").stream())
                        .collect(Collectors.joining(", ")),
                Stream.concat(
                                texts(row, "values").stream().map(TemplateList::values),
                                texts(row, "units").stream().map(TemplateList::code))
                        .collect(Collectors.joining("; ")),
                row.path("note").asText(""));
        return cells.stream().map(cell -> cell.replace("|", "\\|")).collect(Collectors.joining(" | ", "| ", " |\n"));
    }

    private static String values(String value) {
        return value.startsWith("set ") ? "the set \"" + value.substring("set ".length()) + "\"" : code(value);
    }

    private static String code(String schemeAndValue) {
        return "`" + schemeAndValue + "` " + Codes.named(schemeAndValue).meaning();
    }

    private static List<String> texts(JsonNode row, String field) {
        List<String> texts = new ArrayList<>();
        JsonNode node = row.path(field);
        if (node.isArray()) {
            node.forEach(element -> texts.add(element.asText()));
        } else if (!node.isMissingNode()) {
            texts.add(node.asText());
        }
        return texts;
    }
}
