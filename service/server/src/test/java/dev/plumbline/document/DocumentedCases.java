// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.config.NeedleFile;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.record.CaseDocument;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The example of a documentation page, computed. */
final class DocumentedCases {
    private static final Pattern JSON_BLOCK = Pattern.compile("```json\n(.*?)```", Pattern.DOTALL);

    private DocumentedCases() {}

    static JsonNode answer(String page) throws IOException {
        String text = Files.readString(CaseSchema.DOCS.resolve(page));
        Matcher block = JSON_BLOCK.matcher(text);
        assertThat(block.find()).as("a JSON example in " + page).isTrue();
        String json = block.group(1);
        assertThat(new CaseSchema().complaints(new ObjectMapper().readTree(json)))
                .isEmpty();
        CaseDocument document = CaseJson.read(json.getBytes(StandardCharsets.UTF_8), Door.HTTP);
        CaseInputs inputs = CaseInputs.of(document, frame -> {
            throw new IllegalStateException("The example states its scale.");
        });
        return new AnswerJson(NeedleFile.shipped())
                .comparison(document, Comparison.of(inputs.plan(), inputs.observations()));
    }
}
