// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
}
