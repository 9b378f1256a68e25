// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static dev.plumbline.archive.InventedObjects.imageFile;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
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

    @ParameterizedTest
    @ValueSource(
            strings = {
                "PatientNam=x",
                "StudyDate=yesterday",
                "StudyDate=2026",
                "StudyDate=20260101-20260102-20260103",
                "StudyDate=-",
                "StudyTime=9",
                "StudyInstanceUID=1.2.%2e%2e",
                "StudyInstanceUID=x",
                "SeriesInstanceUID=1.2",
                "limit=-1",
                "limit=ten",
                "offset=1e3",
                "includefield=Nonsense",
                "00091001=x",
                "PatientID=a&PatientID=b",
                "00400275.00400009=x"
            })
    void refusesQueriesItCannotAnswer(String query) {
        assertThat(server.json("/studies?" + query).statusCode()).isEqualTo(400);
    }
}
