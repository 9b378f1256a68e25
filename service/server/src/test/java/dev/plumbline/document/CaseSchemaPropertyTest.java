// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ContainerNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;

/** Schema and reader say yes and no to the same documents. */
class CaseSchemaPropertyTest {
    private static final CaseSchema SCHEMA = new CaseSchema();
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final List<String> VALUES = List.of(
            "null",
            "true",
            "\"x\"",
            "\"\"",
            "\" \"",
            "\"a\\u0001\"",
            "\"flat\"",
            "\"inPlane\"",
            "[]",
            "[{}]",
            "{}",
            "-1",
            "0",
            "1",
            "1.5",
            "90",
            "90.5",
            "100.5",
            "1000.5",
            "10000",
            "10000.5",
            "65536",
            "1e7");

    private static final List<String> KNOWN = Stream.of(CaseObject.values())
            .flatMap(object -> object.fields().stream())
            .toList();

    @Property
    void whatIsWrittenIsValid(@ForAll("documents") CaseDocument document) {
        assertThat(SCHEMA.complaints(CaseJson.write(document))).isEmpty();
    }

    @Property(tries = 2000)
    void aDamagedDocumentIsRefusedByBothOrByNeither(@ForAll("documents") CaseDocument document, @ForAll long seed)
            throws Exception {
        ObjectNode json = CaseJson.write(document);
        String damage = damage(json, new Random(seed));
        boolean valid = SCHEMA.complaints(json).isEmpty();
        Statistics.label("after the damage").collect(valid ? "valid" : "refused");
        Optional<Problem> problem = problem(json);
        if (valid && problem.filter(CaseSchemaPropertyTest::isBeyondTheSchema).isPresent()) {
            return;
        }
        assertThat(problem.isEmpty()).as("%s in %s: %s", damage, json, problem).isEqualTo(valid);
    }

    private static Optional<Problem> problem(JsonNode json) {
        try {
            CaseJson.read(json, Door.CLI);
            return Optional.empty();
        } catch (Refusal refusal) {
            return Optional.of(refusal.problem());
        }
    }

    /** What holds between two numbers or two names of one entry; a schema of this draft cannot compare values. */
    private static boolean isBeyondTheSchema(Problem problem) {
        return problem.pointer().matches("/agents/\\d+/volumeMl")
                        && problem.detail().contains("are more than the")
                || problem.pointer().matches("/(events|agents|team|checks)/\\d+/id")
                        && problem.detail().contains("the same id")
                || problem.pointer().matches("/frames/\\d+/frame")
                        && problem.detail().contains("listed already");
    }

    private static String damage(ObjectNode json, Random random) throws Exception {
        List<ContainerNode<?>> nodes = new ArrayList<>();
        collect(json, nodes);
        ContainerNode<?> node = nodes.get(random.nextInt(nodes.size()));
        return node.isObject() ? damageField((ObjectNode) node, random) : damageItem((ArrayNode) node, random);
    }

    private static String damageField(ObjectNode node, Random random) throws Exception {
        List<String> names = new ArrayList<>();
        node.fieldNames().forEachRemaining(names::add);
        String name = names.get(random.nextInt(names.size()));
        switch (random.nextInt(3)) {
            case 0 -> node.remove(name);
            case 1 -> {
                name = KNOWN.get(random.nextInt(KNOWN.size()));
                node.set(name, value(random));
            }
            default -> node.set(name, value(random));
        }
        return name;
    }

    private static String damageItem(ArrayNode node, Random random) throws Exception {
        int item = random.nextInt(node.size());
        boolean band = node.get(item).isNumber(); // the schema cannot say that the lower angle comes first
        if (band || random.nextBoolean()) {
            node.remove(item);
        } else {
            node.set(item, value(random));
        }
        return "item " + item;
    }

    private static JsonNode value(Random random) throws Exception {
        return MAPPER.readTree(VALUES.get(random.nextInt(VALUES.size())));
    }

    private static void collect(JsonNode node, List<ContainerNode<?>> into) {
        if (node instanceof ContainerNode<?> container && !container.isEmpty()) {
            into.add(container);
            node.forEach(child -> collect(child, into));
        }
    }

    @Provide
    Arbitrary<CaseDocument> documents() {
        return CaseDocuments.atTheBedside();
    }
}
