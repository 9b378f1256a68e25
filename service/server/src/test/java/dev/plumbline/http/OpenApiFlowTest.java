// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.problem.Problem;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class OpenApiFlowTest {
    @Test
    void everyRouteIsDescribedAndNothingElse() throws Exception {
        try (OpenDoor door = new OpenDoor()) {
            JsonNode description = door.get("/v1/openapi.json").json();
            List<String> described = new ArrayList<>();
            description
                    .path("paths")
                    .properties()
                    .forEach(path -> path.getValue()
                            .fieldNames()
                            .forEachRemaining(
                                    method -> described.add(method.toUpperCase(Locale.ROOT) + " " + path.getKey())));
            List<String> routes = door.routes().stream()
                    .filter(route -> route.startsWith("GET ") || route.startsWith("POST "))
                    .toList();
            assertThat(routes).hasSizeGreaterThan(10);
            assertThat(described).containsExactlyInAnyOrderElementsOf(routes);
        }
    }

    @Test
    void everyRouteSaysWhatAProblemLooksLike() throws Exception {
        try (OpenDoor door = new OpenDoor()) {
            JsonNode description = door.get("/v1/openapi.json").json();
            assertThat(description.path("openapi").asText()).isEqualTo("3.1.0");
            description
                    .path("paths")
                    .forEach(path -> path.forEach(operation -> {
                        assertThat(operation.path("summary").asText()).endsWith(".");
                        assertThat(operation.path("responses").has("default")).isTrue();
                    }));
        }
    }

    @Test
    void everyProblemIsListedWithItsTitleAndStatus() throws Exception {
        try (OpenDoor door = new OpenDoor()) {
            List<String> listed = new ArrayList<>();
            door.get("/v1/openapi.json")
                    .json()
                    .at("/components/schemas/problem/properties/type/oneOf")
                    .forEach(each -> listed.add(each.path("const").asText() + ", "
                            + each.path("title").asText() + ", "
                            + each.path("description").asText()));
            Stream<Problems.Row> rows = Stream.concat(
                    Stream.of(Problem.class.getPermittedSubclasses())
                            .map(problem -> Problems.of(problem.asSubclass(Problem.class))),
                    Stream.of(
                            Problems.UNKNOWN_ROUTE,
                            Problems.METHOD_NOT_ALLOWED,
                            Problems.BAD_REQUEST,
                            Problems.OUR_FAULT));
            assertThat(listed)
                    .containsExactlyInAnyOrderElementsOf(
                            rows.map(row -> row.type() + ", " + row.title() + ", HTTP status " + row.status() + ".")
                                    .toList());
        }
    }

    @Test
    void everyReferenceLeadsSomewhere() throws Exception {
        try (OpenDoor door = new OpenDoor()) {
            JsonNode description = door.get("/v1/openapi.json").json();
            JsonNode caseSchema = new ObjectMapper()
                    .readTree(Path.of("../../docs/case.schema.json").toFile());
            List<String> references = description.findValuesAsText("$ref");
            assertThat(references).hasSizeGreaterThan(10).allSatisfy(reference -> {
                String[] parts = reference.split("#", 2);
                JsonNode into = parts[0].isEmpty() ? description : caseSchema;
                assertThat(parts[0]).isIn("", caseSchema.path("$id").asText());
                assertThat(parts.length == 1 || into.at(parts[1]).isObject())
                        .as(reference)
                        .isTrue();
            });
            assertThat(description
                            .at("/components/schemas/problem/properties/differs")
                            .isObject())
                    .isTrue();
            assertThat(references).contains("urn:plumbline:schema:plumbline-case/1#/$defs/order");
        }
    }
}
