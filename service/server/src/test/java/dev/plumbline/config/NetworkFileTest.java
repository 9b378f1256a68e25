// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NetworkFileTest {
    @TempDir
    Path folder;

    private ServiceConfig read(String fields) throws IOException {
        Path file = folder.resolve("plumbline.json");
        Files.writeString(file, "{ \"schema\": \"plumbline-service/1\", " + fields.replace('\'', '"') + " }");
        return ServiceConfig.read(file);
    }

    @Test
    void readsPeersAndSaysEverythingThatHolds() throws IOException {
        ServiceConfig config = read("""
                'dicom': { 'port': 0 }, 'peers': [
                  { 'name': 'us1', 'aeTitle': 'US1', 'addresses': ['10.1.2.0/24'], 'dailyMegabytes': 20000 },
                  { 'name': 'pacs', 'aeTitle': 'PACS', 'host': 'localhost', 'port': 104, 'uses': ['archive'] },
                  { 'name': 'web', 'url': 'https://localhost/dicom-web', 'tokenFile': 'token', 'uses': ['archive'] } ]
                """);
        assertThat(config.network().peers(SitePeer.Use.ARCHIVE))
                .extracting(SitePeer::name)
                .containsExactly("pacs", "web");
        assertThat(config.effective().at("/dicom/aeTitle").asText()).isEqualTo("PLUMBLINE");
        assertThat(config.effective().at("/peers/0/dailyMegabytes").asInt()).isEqualTo(20_000);
        assertThat(config.effective().at("/peers/1/dailyMegabytes").isNull()).isTrue();
        assertThat(config.effective().at("/intake/objectMegabytes").isNull()).isTrue();
        assertThat(config.effective().at("/peers/1/proof").asText()).isEqualTo("get");
        assertThat(config.effective().at("/peers/2/tokenFile").asText()).endsWith("token");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "'peers': [ { 'name': 'a' } ]; /peers/0/aeTitle",
                "'peers': [ { 'name': 'a', 'aeTitle': 'A', 'url': 'https://x/' } ]; /peers/0/aeTitle",
                "'peers': [ { 'name': 'a', 'aeTitle': 'A', 'uses': ['archive'] } ]; /peers/0/host",
                "'peers': [ { 'name': 'a', 'aeTitle': 'A' } ]; /peers/0/addresses",
                "'peers': [ { 'name': 'a', 'aeTitle': 'SEVENTEEN_LETTERS', 'addresses': ['::1'] } ]; /peers/0/aeTitle",
                "'peers': [ { 'name': 'a', 'url': 'ftp://x/' } ]; /peers/0/url",
                "'peers': [ { 'name': 'a', 'url': 'https://x/', 'proof': 'get' } ]; /peers/0/proof",
                "'peers': [ { 'name': 'a', 'url': 'https://x/', 'addresses': ['::1'] } ]; /peers/0/addresses",
                "'peers': [ { 'name': 'a', 'aeTitle': 'A', 'addresses': ['::1'], 'tokenFile': 't' } ]; /peers/0/tokenFile",
                "'peers': [ { 'name': 'a', 'url': 'https://me:secret@x/' } ]; /peers/0/url",
                "'peers': [ { 'name': 'a', 'aetitle': 'A' } ]; /peers/0/aetitle",
                "'dicom': { 'port': 104, 'host': '0.0.0.0' }; /dicom/host",
                "'dicom': { 'port': 104, 'idleSeconds': 0 }; /dicom/idleSeconds",
                "'dicom': { 'port': 104, 'tls': { 'certificate': 'c', 'key': 'k' } }; /dicom/tls",
                "'peers': [ { 'name': 'a', 'url': 'https://x/', 'dailyMegabytes': 5 } ]; /peers/0/dailyMegabytes",
                "'peers': [ { 'name': 'a', 'aeTitle': 'A', 'addresses': ['::1'], 'dailyMegabytes': 0 } ]; /peers/0/dailyMegabytes",
                "'intake': { 'objectMegabytes': 4295 }; /intake/objectMegabytes",
                "'intake': { 'httpDailyMegabytes': -1 }; /intake/httpDailyMegabytes",
                "'peers': [ { 'name': 'a', 'url': 'https://x/', 'certificates': ['CN=a'] } ]; /peers/0/certificates",
                "'peers': [ { 'name': 'a', 'aeTitle': 'A', 'addresses': ['::1'], 'certificates': ['CN=a'] } ]; /peers/0/certificates"
            })
    void refusesWithTheField(String fields, String pointer) {
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> read(fields));
        assertThat(refusal.problem().pointer()).isEqualTo(pointer);
        assertThat(refusal.problem().remedy()).isNotEmpty();
    }

    @Test
    void theSchemaDescribesEveryFieldAndNoOther() throws IOException {
        JsonNode schema = new ObjectMapper()
                .readTree(Path.of("../../docs/site/service.schema.json").toFile());
        assertThat(schema.at("/properties/dicom/properties").properties())
                .extracting(Map.Entry::getKey)
                .containsExactlyInAnyOrder(NetworkFile.DICOM_FIELDS);
        assertThat(schema.at("/$defs/peer/properties").properties())
                .extracting(Map.Entry::getKey)
                .containsExactlyInAnyOrder(NetworkFile.PEER_FIELDS);
    }

    /** The example of docs/operating.md, but for the files that only a site has. */
    @Test
    void theDocumentedExampleIsTaken() throws IOException {
        String page = Files.readString(Path.of("../../docs/operating.md"));
        String example = page.substring(page.indexOf("```json") + "```json".length());
        ObjectNode whole = (ObjectNode) new ObjectMapper().readTree(example.substring(0, example.indexOf("```")));
        whole.findParents("tls").forEach(secured -> ((ObjectNode) secured).remove("tls"));
        whole.findParents("certificates").forEach(bound -> ((ObjectNode) bound).remove("certificates"));
        Path file = folder.resolve("plumbline.json");
        Files.writeString(file, whole.put("insecure", true).toString());
        assertThat(ServiceConfig.read(file).network().peers())
                .extracting(SitePeer::name)
                .containsExactly("us1", "pacs", "cloud", "ris");
    }
}
