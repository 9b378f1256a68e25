// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static dev.plumbline.archive.InventedObjects.imageFile;
import static dev.plumbline.archive.InventedObjects.instanceUid;
import static dev.plumbline.archive.InventedObjects.seriesUid;
import static dev.plumbline.archive.InventedObjects.studyUid;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.http.OpenDoor.Answer;
import java.io.ByteArrayInputStream;
import java.net.http.HttpRequest.BodyPublishers;
import java.util.ArrayList;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The service's own door as any HTTP program meets it. DICOM PS3.18 8.3, 8.9; RFC 9110 9.3.2, 15.5.6. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DicomWebCapabilitiesFlowTest {
    private static final String INSTANCE =
            "/dicomweb/studies/" + studyUid(1) + "/series/" + seriesUid(1, 1) + "/instances/" + instanceUid(1, 1, 1);

    /** The same bulk data under a second address, for viewers that resolve it otherwise. */
    private static final String ALIAS = "GET /dicomweb/studies/{study}/instances/{instance}/bulkdata/{place}";

    private OpenDoor door;

    @BeforeAll
    void start() throws Exception {
        door = new OpenDoor();
        assertThat(door.postDicom("/dicomweb/studies", imageFile(1, 1, 1)).status())
                .isEqualTo(200);
    }

    @AfterAll
    void stop() throws Exception {
        door.close();
    }

    @Test
    void describesEveryRouteAndNothingElse() throws Exception {
        Answer answer = options("/dicomweb", "application/json");
        assertThat(answer.status()).isEqualTo(200);
        JsonNode resources = answer.json().at("/application/resources");
        assertThat(resources.path("base").asText()).isEqualTo("http://127.0.0.1:" + door.port() + "/dicomweb/");
        List<String> described = new ArrayList<>();
        resources
                .path("resource")
                .forEach(resource -> resource.path("method")
                        .forEach(method -> described.add(method.path("name").asText() + " /dicomweb/"
                                + resource.path("path").asText())));
        List<String> routes = door.routes().stream()
                .filter(route -> route.matches("(GET|POST) /dicomweb/.*") && !route.equals(ALIAS))
                .toList();
        assertThat(described).containsExactlyInAnyOrderElementsOf(routes);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/dicomweb", "/dicomweb/"})
    void describesItselfAsWadlUnlessJsonIsWanted(String path) throws Exception {
        Answer answer = options(path, "*/*");
        assertThat(answer.type()).isEqualTo("application/vnd.sun.wadl+xml");
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
        factory.setNamespaceAware(true);
        Document wadl = factory.newDocumentBuilder()
                .parse(new ByteArrayInputStream(answer.response().body()));
        Element application = wadl.getDocumentElement();
        assertThat(application.getNamespaceURI()).isEqualTo("http://wadl.dev.java.net/2009/02");
        assertThat(application.getElementsByTagName("method").getLength())
                .isEqualTo(DicomWebCapabilities.described().size());
        assertThat(options(path, "text/html").status()).isEqualTo(406);
    }

    private Answer options(String path, String accept) throws Exception {
        return door.send(door.request(path).header("Accept", accept).method("OPTIONS", BodyPublishers.noBody()));
    }

    @Test
    void answersAHeadAsTheGetWithoutItsBody() throws Exception {
        for (String path : List.of("/dicomweb/studies", INSTANCE, INSTANCE + "/metadata", INSTANCE + "/rendered")) {
            Answer got = door.get(path);
            Answer head = head(path);
            assertThat(head.status()).as(path).isEqualTo(200);
            assertThat(head.type()).as(path).isEqualTo(got.type());
            assertThat(head.response().body()).isEmpty();
        }
        assertThat(head("/dicomweb/studies/1.2.3").status()).isEqualTo(404);
        assertThat(head("/dicomweb/studies?PatientID=nobody").status()).isEqualTo(204);
    }

    private Answer head(String path) throws Exception {
        return door.send(door.request(path).method("HEAD", BodyPublishers.noBody()));
    }

    @Test
    void saysWhichMethodsAnAddressTakes() throws Exception {
        Answer refused = door.send(door.request("/dicomweb/studies").PUT(BodyPublishers.noBody()));
        assertThat(refused.status()).isEqualTo(405);
        assertThat(refused.header("Allow")).contains("GET", "POST");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/studies?StudyDate=yesterday",
                "/studies?limit=-1",
                "/studies?StudyInstanceUID=x",
                "/studies?fuzzymatching=perhaps",
                "/studies/abc",
                "/studies/abc/metadata"
            })
    void callsAValueThatCannotBeTakenABadRequest(String path) throws Exception {
        Answer refused = door.get("/dicomweb" + path);
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.type()).isEqualTo("application/problem+json");
        assertThat(refused.json().path("type").asText()).isEqualTo("urn:plumbline:problem:bad-request");
        assertThat(refused.json().path("detail").asText()).isNotEmpty();
    }

    /** In a query a plus sign stands for itself. */
    @ParameterizedTest
    @ValueSource(strings = {"application/dicom+json", "application/dicom%2Bjson", "application/json"})
    void readsTheAcceptParameterOfAQuery(String accept) throws Exception {
        assertThat(door.get("/dicomweb/studies?accept=" + accept).status()).isEqualTo(200);
    }
}
