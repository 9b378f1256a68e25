// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.record.CaseDocument;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class CaseJsonPropertyTest {
    @Property
    void whatIsWrittenReadsBackEqual(@ForAll("documents") CaseDocument document) throws Exception {
        byte[] json = new ObjectMapper().writeValueAsBytes(CaseJson.write(document));
        assertThat(CaseJson.read(json, Door.HTTP)).isEqualTo(document);
    }

    @Property
    void theCanonicalTextReadsBackEqualAndIsItsOwnCanonicalText(@ForAll("documents") CaseDocument document) {
        String canonical = CaseJson.canonical(document);
        CaseDocument back = CaseJson.read(canonical.getBytes(StandardCharsets.UTF_8), Door.HTTP);
        assertThat(back).isEqualTo(document);
        assertThat(CaseJson.canonical(back)).isEqualTo(canonical);
    }

    @Property
    void orderAndEmptyFieldsDoNotChangeTheCanonicalText(@ForAll("documents") CaseDocument document) {
        ObjectNode json = CaseJson.write(document);
        ObjectNode other = (ObjectNode) reversed(json);
        other.putNull("caseNote").putArray("empty");
        other.putObject("emptyObject").putNull("nothing");
        assertThat(Canonical.text(other)).isEqualTo(Canonical.text(json));
    }

    @Property
    void anIdIsDerivedFromTheWholeContent(
            @ForAll("documents") CaseDocument one, @ForAll("documents") CaseDocument two) {
        String first = CaseJson.identified(one).caseId().orElseThrow();
        assertThat(first).isEqualTo(CaseJson.identified(one).caseId().orElseThrow());
        if (one.caseId().isEmpty() && two.caseId().isEmpty()) {
            boolean sameId = first.equals(CaseJson.identified(two).caseId().orElseThrow());
            assertThat(sameId).isEqualTo(one.equals(two));
        }
    }

    private static JsonNode reversed(JsonNode node) {
        if (node.isArray()) {
            ArrayNode array = new ObjectMapper().createArrayNode();
            node.forEach(item -> array.add(reversed(item)));
            return array;
        }
        if (!node.isObject()) {
            return node;
        }
        List<Map.Entry<String, JsonNode>> fields = new ArrayList<>(node.properties());
        Collections.reverse(fields);
        ObjectNode object = new ObjectMapper().createObjectNode();
        fields.forEach(field -> object.set(field.getKey(), reversed(field.getValue())));
        return object;
    }

    @Provide
    Arbitrary<CaseDocument> documents() {
        return CaseDocuments.atTheBedside();
    }
}
