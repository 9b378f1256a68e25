// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Stream;
import org.assertj.core.api.Assertions;

/** Shipped site files for tests: as they are, or with one thing changed. */
final class SiteFiles {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private SiteFiles() {}

    static ObjectNode shipped(String name) throws IOException {
        try (InputStream in = SiteFile.shipped(name)) {
            return (ObjectNode) MAPPER.readTree(in);
        }
    }

    static InputStream bytes(JsonNode tree) {
        return new ByteArrayInputStream(tree.toString().getBytes(StandardCharsets.UTF_8));
    }

    /** What reading says about the shipped file after a change. */
    static Problem problem(String name, Function<InputStream, ?> reading, Consumer<ObjectNode> change)
            throws IOException {
        ObjectNode tree = shipped(name);
        change.accept(tree);
        Refusal refusal = Assertions.catchThrowableOfType(Refusal.class, () -> reading.apply(bytes(tree)));
        assertThat(refusal).as("the changed file is refused").isNotNull();
        return refusal.problem();
    }

    /** Complaints of the published schema; none when the tree conforms. */
    static List<String> complaints(String schemaFile, JsonNode tree) throws IOException {
        Path start = Path.of("").toAbsolutePath();
        Path folder = Stream.iterate(start, Objects::nonNull, Path::getParent)
                .filter(candidate -> Files.isDirectory(candidate.resolve("docs/site")))
                .findFirst()
                .orElseThrow();
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Files.readString(folder.resolve("docs/site").resolve(schemaFile)));
        return schema.validate(tree).stream().map(Object::toString).toList();
    }
}
