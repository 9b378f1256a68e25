// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.document.StrictJson;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.Optional;

/** The service that is running, asked over HTTP: while it runs, nobody else may touch its folder. */
final class RunningService {
    private static final Duration WAIT = Duration.ofSeconds(10);
    private static final int FIRST_PROBLEM = 400;

    private final URI address;
    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(WAIT).build();

    RunningService(ServiceConfig config) {
        String host = config.host().contains(":") ? "[" + config.host() + "]" : config.host();
        String reachable = host.equals("0.0.0.0") ? "127.0.0.1" : host;
        this.address = URI.create("http://" + reachable + ":" + config.port());
    }

    /** Its answer; empty where no service is running there. */
    Optional<JsonNode> get(String path) {
        return answer(HttpRequest.newBuilder(address.resolve(path)).GET());
    }

    /** As {@link #get}, for what changes something. */
    Optional<JsonNode> post(String path) {
        return answer(HttpRequest.newBuilder(address.resolve(path)).POST(BodyPublishers.noBody()));
    }

    /** As {@link #post(String)}, with something to say. */
    Optional<JsonNode> post(String path, JsonNode body) {
        return answer(HttpRequest.newBuilder(address.resolve(path))
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(body.toString())));
    }

    private Optional<JsonNode> answer(HttpRequest.Builder request) {
        HttpResponse<byte[]> response;
        try {
            response = client.send(request.timeout(WAIT).build(), BodyHandlers.ofByteArray());
        } catch (IOException e) {
            return Optional.empty(); // nobody there; the command looks into the folder itself
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("Interrupted while waiting for the service.", e);
        }
        JsonNode json = StrictJson.read(response.body());
        if (response.statusCode() >= FIRST_PROBLEM) {
            throw new Refusal(new Problem.NotHeld(
                    "",
                    json.path("detail").asText("The service refused."),
                    json.path("remedy").asText("")));
        }
        return Optional.of(json);
    }
}
