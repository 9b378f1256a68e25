// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The requests that docs/api.md shows, sent in their order as they stand there. */
class DocumentedRequestsFlowTest {
    private static final Pattern CURL = Pattern.compile(
            "curl (-X POST )?localhost:8642(\\S+)(?: -H 'Content-Type: application/json' -d '([^']*)')?");

    @Test
    void everyRequestOfTheBedsideIsAnswered() throws Exception {
        String page = Files.readString(Path.of("..", "..", "docs", "api.md"));
        Matcher shown = CURL.matcher(page);
        List<String> answered = new ArrayList<>();
        try (OpenDoor door = new OpenDoor()) {
            while (shown.find()) {
                OpenDoor.Answer answer =
                        shown.group(1) == null ? door.get(shown.group(2)) : door.post(shown.group(2), shown.group(3));
                assertThat(answer.status()).as(shown.group(2) + answer.text()).isIn(200, 201);
                answered.add(shown.group(2));
            }
            assertThat(answered).hasSizeGreaterThanOrEqualTo(6).contains("/v1/sessions/monday-3", "/v1/sight/next");
            assertThat(door.get("/v1/cases/demo-1/log").json().path("contradictions"))
                    .isEmpty();
        }
    }
}
