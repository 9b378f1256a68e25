// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.http.ForeignWriter.Drawn;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The same marks, written by programs that know nothing of each other, are the same case. */
class ForeignWriterConformanceTest {
    private static final List<Drawn> MARKS = List.of(
            new Drawn("target", List.of(new double[] {320.5, 300})),
            new Drawn("skin", List.of(new double[] {60, 40}, new double[] {580, 41.25})),
            new Drawn("shaft", List.of(new double[] {560, 120}, new double[] {380, 252})),
            new Drawn(
                    "artery",
                    List.of(new double[] {200, 300}, new double[] {230, 300}, new double[] {230, 330.5}, new double[] {
                        200, 330
                    })));

    @TempDir
    private Path folder;

    @ParameterizedTest
    @EnumSource
    void everyWriterGivesTheSameCase(ForeignWriter writer) throws Exception {
        Path frame = Files.write(folder.resolve("planned.dcm"), SampleBodies.PLANNED_FRAME);
        try (OpenDoor door = new OpenDoor()) {
            assertThat(door.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME).status())
                    .isEqualTo(201);
            OpenDoor.Answer answer = door.postDicom("/v1/marks", writer.bytes(folder, frame, MARKS));
            assertThat(answer.status()).as(answer.text()).isEqualTo(201);
            JsonNode account = answer.json();
            for (String nothing : List.of("unmatched", "questions", "refused")) {
                assertThat(account.path(nothing)).as(account.toString()).isEmpty();
            }
            assertThat(account.path("placed")).hasSize(MARKS.size());
            JsonNode held =
                    door.get("/v1/cases/" + account.path("caseId").asText()).json();
            assertThat(points(held.at("/marks/target"))).containsExactly(320.5, 300.0);
            assertThat(points(held.at("/marks/skin"))).containsExactly(60.0, 40.0, 580.0, 41.25);
            assertThat(points(held.at("/observations/0/shaft"))).containsExactly(560.0, 120.0, 380.0, 252.0);
            assertThat(held.at("/marks/hazards")).hasSize(1);
            assertThat(held.at("/marks/hazards/0/name").asText()).isEqualTo("artery");
            assertThat(held.at("/marks/hazards/0/kind").asText()).isEqualTo("artery");
            assertThat(points(held.at("/marks/hazards/0/outline")))
                    .containsExactly(200.0, 300.0, 230.0, 300.0, 230.0, 330.5, 200.0, 330.0);
        }
    }

    @Test
    void theSameMarksFromSeveralWritersAreCountedOnce() throws Exception {
        Path frame = Files.write(folder.resolve("planned.dcm"), SampleBodies.PLANNED_FRAME);
        try (OpenDoor door = new OpenDoor()) {
            door.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME);
            JsonNode account = null;
            for (ForeignWriter writer : ForeignWriter.values()) {
                account = door.postDicom("/v1/marks", writer.bytes(folder, frame, MARKS))
                        .json();
            }
            assertThat(account).isNotNull();
            assertThat(account.path("placed")).hasSize(MARKS.size());
            assertThat(account.path("questions")).as(account.toString()).isEmpty();
        }
    }

    private static List<Double> points(JsonNode marks) {
        List<Double> values = new ArrayList<>();
        for (JsonNode mark : marks.isArray() ? marks : List.of(marks)) {
            values.add(mark.path("column").asDouble());
            values.add(mark.path("row").asDouble());
        }
        return values;
    }
}
