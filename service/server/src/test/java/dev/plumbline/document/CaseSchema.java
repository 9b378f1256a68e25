// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;

/** {@code docs/case.schema.json}, judged by a validator that is not ours. */
final class CaseSchema {
    static final Path DOCS = Path.of("..", "..", "docs");

    final JsonNode json;
    private final Schema schema;

    CaseSchema() {
        try {
            json = new ObjectMapper().readTree(DOCS.resolve("case.schema.json").toFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(json);
    }

    List<String> complaints(JsonNode document) {
        return schema.validate(document).stream().map(Object::toString).toList();
    }
}
