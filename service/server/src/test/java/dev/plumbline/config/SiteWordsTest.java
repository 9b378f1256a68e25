// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** No text that ships for the bedside promises too much. */
class SiteWordsTest {
    private static final Pattern PROMISES =
            Pattern.compile("\\b(safe|safely|clear of|no hazards|correct|optimal|optimum|"
                    + "recommended|on target|hit|miss|missed|error|accurate|accurately|guided|competent|plumbline confirms|"
                    + "no complications)\\b");

    private static List<String> texts(JsonNode node) {
        List<String> texts = new ArrayList<>();
        if (node.isTextual()) {
            texts.add(node.textValue());
        }
        node.forEach(child -> texts.addAll(texts(child)));
        return texts;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "needles.json",
                "transducers.json",
                "sight-ladder.json",
                "drugs.json",
                "formulary-example.json",
                "blocks.json",
                "set-up-checks.json",
                "completeness.json"
            })
    void noShippedFilePromisesTooMuch(String file) throws IOException {
        List<String> texts = texts(SiteFiles.shipped(file));
        assertThat(texts).hasSizeGreaterThan(5);
        for (String text : texts) {
            Matcher found = PROMISES.matcher(text.toLowerCase(Locale.ROOT));
            assertThat(found.find()).as(text).isFalse();
        }
    }

    @Test
    void theTestKnowsAPromiseWhenItSeesOne() {
        assertThat(PROMISES.matcher("the path is safe").find()).isTrue();
        assertThat(PROMISES.matcher("unsafe").find()).isFalse();
    }
}
