// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static dev.plumbline.archive.InventedObjects.imageFile;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Searches over three studies of one series and one image each; nothing here changes what is held. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DicomWebSearchFlowTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private ArchiveServer server;

    @BeforeAll
    void start(@TempDir Path root) throws IOException {
        server = new ArchiveServer(root.resolve("data"));
        server.stow(imageFile(1, 1, 1), imageFile(2, 1, 1), imageFile(3, 1, 1));
    }

    @AfterAll
    void stop() throws IOException {
        server.close();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "PatientName=invented^person 1|1",
                "PatientName=INVENTED*|3",
                "00100010=*erson ?|3",
                "00100010=*erson%202*|1",
                "PatientName=person|0",
                "PatientID=INVENTED-3|1",
                "PatientID=invented-3|0",
                "PatientID=INVENTED-*|3",
                "PatientID=INVENTED-[12]|0",
                "PatientID=|3",
                "PatientID=*|3",
                "StudyDate=20260102|1",
                "StudyDate=20260102-|2",
                "StudyDate=-20260102|2",
                "StudyDate=20260101-20260102|2",
                "StudyDate=20270101-|0",
                "StudyTime=1015|3",
                "StudyTime=101501-|0",
                "StudyTime=10-11|3",
                "AccessionNumber=ACC1|1",
                "ModalitiesInStudy=US|3",
                "ModalitiesInStudy=SR|0",
                "StudyInstanceUID=2.25.10001,2.25.10003|2",
                "StudyInstanceUID=2.25.10001\\2.25.10003|2",
                "StudyInstanceUID=2.25.10001&StudyInstanceUID=2.25.10003|2",
                "StudyInstanceUID=2.25.1|0",
                "StudyDate=20260101-&PatientName=*1|1",
                "limit=2|2",
                "limit=2&offset=2|1",
                "offset=3|0",
                "limit=0|0"
            })
    void matchesAsTheStandardSays(String query, int count) throws IOException {
        HttpResponse<byte[]> answer = server.json("/studies?"
                + query.replace(" ", "%20")
                        .replace("^", "%5E")
                        .replace("[", "%5B")
                        .replace("]", "%5D")
                        .replace("\\", "%5C"));
        assertThat(answer.statusCode()).isEqualTo(count == 0 ? 204 : 200);
        assertThat(count == 0 ? 0 : JSON.readTree(answer.body()).size()).isEqualTo(count);
    }

    /** Source: DICOM PS3.18 8.3.1 and 10.6.2: what is not supported is ignored, which a warning says. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "PatientNam=x|PatientNam",
                "PatientID.=x|not supported",
                "00091001=x|00091001",
                "00400275.00321064=x|00400275.00321064",
                "fuzzymatching=true|fuzzymatching"
            })
    void ignoresWhatItDoesNotSupportAndSaysSo(String query, String named) throws IOException {
        HttpResponse<byte[]> answer = server.json("/studies?" + query);
        assertThat(JSON.readTree(answer.body())).hasSize(3);
        assertThat(answer.headers().firstValue("Warning").orElseThrow())
                .startsWith("299 ")
                .contains(named);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "ModalitiesInStudy=US|3",
                "ModalitiesInStudy=SR,US|3",
                "ModalitiesInStudy=SR|0",
                "SeriesInstanceUID=1.2|0",
                "includefield=Nonsense|3",
                "RequestAttributesSequence.RequestedProcedureID=RP1|0",
                "00400275.00400009=x|0"
            })
    void matchesOnWhatLiesDeeper(String query, int count) throws IOException {
        HttpResponse<byte[]> answer = server.json("/studies?" + query);
        assertThat(answer.statusCode()).isEqualTo(count == 0 ? 204 : 200);
        assertThat(count == 0 ? 0 : JSON.readTree(answer.body()).size()).isEqualTo(count);
    }

    /** Source: DICOM PS3.18 10.6, required keys of series: the two identifiers of a request. */
    @Test
    void findsWhatWasAskedForByTheIdentifiersOfItsRequest(@TempDir Path root) throws IOException {
        try (ArchiveServer other = new ArchiveServer(root.resolve("requests"))) {
            DataSet request =
                    new DataSet().put(Tag.SCHEDULED_PROCEDURE_STEP_ID, "STEP7").put(Tag.REQUESTED_PROCEDURE_ID, "RP7");
            other.stow(
                    DicomFile.encode(
                            InventedObjects.image(1, 1, 1).put(Tag.REQUEST_ATTRIBUTES_SEQUENCE, List.of(request))),
                    imageFile(2, 1, 1));
            for (String query : List.of(
                    "RequestAttributesSequence.RequestedProcedureID=RP7",
                    "00400275.00401001=RP*",
                    "RequestAttributesSequence.ScheduledProcedureStepID=STEP7")) {
                JsonNode found = JSON.readTree(other.json("/series?" + query).body());
                assertThat(found).as(query).hasSize(1);
                assertThat(found.at("/0/00400275/Value/0/00401001/Value/0").asText())
                        .isEqualTo("RP7");
            }
            assertThat(other.json("/series?00400275.00401001=RP8").statusCode()).isEqualTo(204);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "StudyDate=yesterday",
                "StudyDate=2026",
                "StudyDate=20260101-20260102-20260103",
                "StudyDate=-",
                "StudyTime=9",
                "StudyInstanceUID=1.2.%2e%2e",
                "StudyInstanceUID=x",
                "limit=-1",
                "limit=ten",
                "offset=1e3",
                "PatientID=a&PatientID=b",
                "fuzzymatching=perhaps"
            })
    void refusesQueriesThatCannotBeRead(String query) {
        assertThat(server.json("/studies?" + query).statusCode()).isEqualTo(400);
    }
}
