// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.geometry.Standing;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.BlockList;
import dev.plumbline.procedure.Completeness;
import dev.plumbline.procedure.SetUpChecks;
import dev.plumbline.sight.SightStep;
import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProcedureFilesTest {
    private static final BlockList BLOCKS = BlockFile.shipped();
    private static final SetUpChecks CHECKS = CheckFile.shipped();
    private static final Completeness LIST = CompletenessFile.shipped();

    @ParameterizedTest
    @CsvSource({
        "blocks.json, blocks.schema.json",
        "set-up-checks.json, set-up-checks.schema.json",
        "completeness.json, completeness.schema.json"
    })
    void shippedFilesConformToTheirSchemas(String file, String schema) throws IOException {
        assertThat(SiteFiles.complaints(schema, SiteFiles.shipped(file))).isEmpty();
        assertThat(SiteFiles.complaints(schema, SiteFiles.shipped(file).put("colour", "red")))
                .isNotEmpty();
    }

    /** Code to word of every code in the template data. */
    private static Map<String, String> codes() throws IOException {
        try (InputStream in = Objects.requireNonNull(
                ProcedureFilesTest.class.getResourceAsStream("/dev/plumbline/templates/codes.json"))) {
            Map<String, String> codes = new HashMap<>();
            collect(new ObjectMapper().readTree(in), codes);
            return codes;
        }
    }

    private static void collect(JsonNode node, Map<String, String> codes) {
        if (node.hasNonNull("code")) {
            codes.put(node.get("code").asText(), node.path("word").asText());
        }
        node.forEach(child -> collect(child, codes));
    }

    @Test
    void blocksAreThoseOfTheReportsCodes() throws IOException {
        Map<String, String> codes = codes();
        assertThat(BLOCKS.blocks()).hasSize((int)
                codes.keySet().stream().filter(c -> c.startsWith("B-")).count());
        assertThat(BLOCKS.blocks()).allSatisfy(block -> assertThat(codes).containsEntry(block.code(), block.id()));
    }

    @Test
    void codesOfChecksAndStepsAreInTheReportsCodes() throws IOException {
        Map<String, String> codes = codes();
        Stream<String> used = Stream.concat(
                CHECKS.checks().stream().flatMap(check -> check.code().stream()),
                SightFile.shipped().ladders().stream()
                        .flatMap(ladder -> ladder.steps().stream())
                        .map(SightStep::code)
                        .flatMap(java.util.Optional::stream));
        assertThat(used).isNotEmpty().allSatisfy(code -> assertThat(codes).containsKey(code));
    }

    @Test
    void blocksCarryNoNumber() throws IOException {
        assertThat(SiteFiles.shipped(BlockFile.NAME).get("blocks").toString()).doesNotContainPattern("\\d");
    }

    @Test
    void namesFromMemorySaySo() {
        assertThat(BLOCKS.block("medianNerve").foundation().standing()).isEqualTo(Standing.FROM_MEMORY);
        assertThat(BLOCKS.block("axillaryBrachialPlexus").foundation().standing())
                .isEqualTo(Standing.CITED);
    }

    @Test
    void anUnknownBlockIsRefused() {
        assertThatThrownBy(() -> BLOCKS.block("spinal")).isInstanceOf(Refusal.class);
    }

    @Test
    void exactlyTheAllowedItemsAreRequiredToSign() {
        assertThat(LIST.items().stream()
                        .filter(Completeness.Item::requiredToSign)
                        .map(Completeness.Item::id))
                .containsExactlyInAnyOrderElementsOf(Completeness.MAY_BE_REQUIRED);
    }

    @Test
    void nothingMoreCanBeRequired() throws IOException {
        Problem problem = SiteFiles.problem(
                CompletenessFile.NAME,
                CompletenessFile::read,
                tree -> ((ObjectNode) tree.withArray("items").get(1)).put("requiredToSign", true));
        assertThat(problem.detail()).contains("weight cannot be required");
        ObjectNode more = SiteFiles.shipped(CompletenessFile.NAME);
        ((ObjectNode) more.withArray("items").get(1)).put("requiredToSign", true);
        assertThat(SiteFiles.complaints("completeness.schema.json", more)).isNotEmpty();
    }

    /** The panel's weak agreements: grade of the performer, coagulation, time-out. */
    @Test
    void agreementIsThePanels() {
        assertThat(LIST.items().stream()
                        .filter(item -> item.agreement() == Completeness.Agreement.WEAK)
                        .map(Completeness.Item::id))
                .containsExactly("performerGrade", "coagulation", "checklist");
    }

    @Test
    void aStopMomentHoldsFiveMinutes() throws IOException {
        assertThat(CHECKS.stopMomentHolds()).isEqualTo(Duration.ofMinutes(5));
        assertThat(SiteFiles.problem(CheckFile.NAME, CheckFile::read, tree -> tree.put("stopMomentMinutes", 0))
                        .detail())
                .contains("stop moment");
    }

    @Test
    void anIdIsGivenOnce() throws IOException {
        for (String file : List.of(CheckFile.NAME, BlockFile.NAME, CompletenessFile.NAME)) {
            String list = file.equals(CheckFile.NAME) ? "checks" : file.equals(BlockFile.NAME) ? "blocks" : "items";
            assertThat(SiteFiles.problem(
                                    file,
                                    in -> file.equals(CheckFile.NAME)
                                            ? CheckFile.read(in)
                                            : file.equals(BlockFile.NAME)
                                                    ? BlockFile.read(in)
                                                    : CompletenessFile.read(in),
                                    tree -> tree.withArray(list)
                                            .add(tree.withArray(list).get(0).deepCopy()))
                            .detail())
                    .startsWith("Two ");
        }
    }
}
