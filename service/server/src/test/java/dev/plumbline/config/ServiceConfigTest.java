// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ServiceConfigTest {
    @TempDir
    static Path folder;

    private static ServiceConfig read(String fields) throws IOException {
        Path file =
                Files.writeString(folder.resolve("service.json"), "{\"schema\":\"plumbline-service/1\"" + fields + "}");
        return ServiceConfig.read(file);
    }

    private static Problem refused(String fields) {
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> read(fields));
        assertThat(refusal).as(fields).isNotNull();
        assertThat(refusal.problem().remedy()).isNotBlank();
        return refusal.problem();
    }

    @Test
    void whatIsNotSaidIsAsUsual() throws IOException {
        assertThat(read("")).isEqualTo(ServiceConfig.USUAL);
    }

    @Test
    void everyFieldIsTaken() throws IOException {
        ServiceConfig config = read(
                ",\"host\":\"localhost\",\"port\":0,\"dataFolder\":\"data\","
                        + "\"institution\":\"Sample Hospital\",\"country\":\"DE\",\"needles\":\"needles.json\",\"transducers\":\"transducers.json\"");
        assertThat(config.host()).isEqualTo("localhost");
        assertThat(config.port()).isZero();
        assertThat(config.dataFolder()).contains(folder.resolve("data").toAbsolutePath());
        assertThat(config.institution()).isEqualTo("Sample Hospital");
        assertThat(config.country()).isEqualTo("DE");
        assertThat(config.needles()).contains(folder.resolve("needles.json").toAbsolutePath());
        assertThat(config.transducers())
                .contains(folder.resolve("transducers.json").toAbsolutePath());
    }

    @Test
    void theSchemaDescribesEveryFieldAndNoOther() throws IOException {
        JsonNode properties = new ObjectMapper()
                .readTree(Path.of("../../docs/site/service.schema.json").toFile())
                .path("properties");
        List<String> described = new ArrayList<>();
        properties.fieldNames().forEachRemaining(described::add);
        assertThat(described).contains("schema");
        described.removeAll(List.of("schema", "about"));
        assertThat(described).containsExactlyInAnyOrder(ServiceConfig.FIELDS);
        assertThat(properties.path("site").path("properties").properties())
                .extracting(Map.Entry::getKey)
                .containsExactlyInAnyOrder(BedsideFiles.FIELDS);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                ",\"port\":65536|/port",
                ",\"port\":-1|/port",
                ",\"port\":\"x\"|/port",
                ",\"host\":\"0.0.0.0\"|/host",
                ",\"country\":\"gb\"|/country",
                ",\"dataFolder\":7|/dataFolder",
                ",\"prot\":8642|/prot",
            })
    void refusesWhatItDoesNotKnowAndNamesTheField(String fields, String pointer) {
        assertThat(refused(fields).pointer()).isEqualTo(pointer);
    }

    @Test
    void anOpenAddressMustBeAskedFor() throws IOException {
        assertThat(read(",\"host\":\"0.0.0.0\",\"insecure\":true").host()).isEqualTo("0.0.0.0");
    }

    @Test
    void aFileThatIsNotThereOrNoJsonIsRefused() throws IOException {
        assertThat(catchThrowableOfType(Refusal.class, () -> ServiceConfig.read(folder.resolve("nowhere.json"))))
                .isNotNull();
        Path letter = Files.writeString(folder.resolve("letter.json"), "Dear colleague");
        assertThat(catchThrowableOfType(Refusal.class, () -> ServiceConfig.read(letter)))
                .isNotNull();
    }

    @Test
    void aSitesNeedlesAreReadAndAMistakeNamesFileAndField() throws IOException {
        Path file = folder.resolve("needles-of-the-site.json");
        try (var in = SiteFile.shipped(NeedleFile.NAME)) {
            Files.copy(in, file);
        }
        assertThat(NeedleFile.read(file)).isEqualTo(NeedleFile.shipped());
        Files.writeString(file, Files.readString(file).replaceFirst("\"lengthMm\": 35.0", "\"lengthMm\": -35.0"));
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> NeedleFile.read(file));
        assertThat(refusal.problem().pointer()).startsWith("/needles/");
        assertThat(refusal.problem().detail()).contains("needles-of-the-site.json");
    }
}
