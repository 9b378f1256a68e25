// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The pages as they are sent, and who may not write through a browser. */
class PagesFlowTest {
    private static final String CASE = """
            {"schema": "plumbline-case/1", "caseId": "%s", "approach": "inPlane",
             "frame": {"columns": 640, "rows": 640, "mmPerColumn": 0.1, "mmPerRow": 0.1},
             "marks": {"target": {"column": 320, "row": 360}},
             "context": {"block": "%s", "laterality": "left", "operator": {"name": "%s"}}}\
            """;

    private OpenDoor door;

    @BeforeEach
    void open() throws Exception {
        door = new OpenDoor();
    }

    @AfterEach
    void close() throws Exception {
        door.close();
    }

    @ParameterizedTest
    @ValueSource(strings = {"/pages/list", "/pages/mark", "/pages/log?case=c-1"})
    void aPageHasNothingInlineAndLetsNothingIn(String path) throws Exception {
        OpenDoor.Answer page = door.get(path);
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.type()).isEqualToIgnoringWhitespace("text/html;charset=utf-8");
        assertThat(page.header("Content-Security-Policy"))
                .contains("default-src 'none'", "script-src 'self'", "style-src 'self'", "frame-ancestors 'none'")
                .doesNotContain("unsafe");
        assertThat(page.header("Referrer-Policy")).isEqualTo("no-referrer");
        assertThat(page.text())
                .doesNotContainPattern("<script(?![^>]* src=)")
                .doesNotContainPattern("(?i) (style|on[a-z]+)=\"")
                .doesNotContain("<style", "http://", "https://")
                .contains("Not a medical device cleared by any authority.");
    }

    @Test
    void everyFileThatAPageNamesIsThere() throws Exception {
        for (String path : new String[] {"/pages/list", "/pages/mark", "/pages/log"}) {
            var named = java.util.regex.Pattern.compile("\"(files/[^\"]+)\"")
                    .matcher(door.get(path).text());
            int files = 0;
            while (named.find()) {
                assertThat(door.get("/pages/" + named.group(1)).status()).isEqualTo(200);
                files++;
            }
            assertThat(files).isGreaterThanOrEqualTo(3);
        }
        assertThat(door.get("/pages/files/openapi.json").status()).isEqualTo(404);
        assertThat(door.get("/pages/files/..%2fhttp%2fopenapi.json").status()).isIn(400, 404);
    }

    @Test
    void aBrowserIsLedToThePagesAndAProgramIsNot() throws Exception {
        OpenDoor.Answer browser =
                door.send(door.request("/").header("Accept", "text/html,application/xhtml+xml,*/*;q=0.8"));
        assertThat(browser.status()).isEqualTo(303);
        assertThat(browser.header("Location")).endsWith("pages/list");
        assertThat(door.get("/").json().path("links").path("pages").asText()).isEqualTo("/pages/list");
    }

    @Test
    void unfinishedCasesAreListedAndFoundByWhatTheySay() throws Exception {
        door.post("/v1/cases", CASE.formatted("c-1", "femoralNerve", "Doe^Jo"));
        door.post("/v1/cases", CASE.formatted("c-2", "axillaryBrachialPlexus", "Roe^Al"));
        assertThat(door.get("/v1/cases").json().path("cases")).hasSize(2);
        var found = door.get("/v1/cases?block=femoralNerve&operator=doe%5Ejo")
                .json()
                .path("cases");
        assertThat(found).hasSize(1);
        assertThat(found.get(0).path("caseId").asText()).isEqualTo("c-1");
        assertThat(found.get(0).path("laterality").asText()).isEqualTo("left");
        assertThat(found.get(0).path("chosen").asBoolean()).isFalse();
        assertThat(door.get("/v1/cases?from=2026-01-06").json().path("cases")).isEmpty();
        assertThat(door.get("/v1/cases?patient=nobody").json().path("cases")).isEmpty();
        assertThat(door.get("/v1/cases?limit=1&offset=1").json().path("cases")).hasSize(1);
        String page = door.get("/pages/list?block=femoralNerve").text();
        assertThat(page).contains("mark?case=c-1", "Doe, Jo", "Femoral").doesNotContain("mark?case=c-2");
    }

    @Test
    void aCaseThatLacksItsApproachIsListedToo() throws Exception {
        String open = CASE.formatted("c-1", "femoralNerve", "Doe^Jo").replace("\"approach\": \"inPlane\",", "");
        assertThat(door.post("/v1/cases", open).status()).isEqualTo(201);
        assertThat(door.get("/v1/cases")
                        .json()
                        .path("cases")
                        .get(0)
                        .path("approach")
                        .isNull())
                .isTrue();
        assertThat(door.get("/pages/list").text()).contains("approach not stated");
    }

    @Test
    void whatCannotBeSearchedForIsSaidOnThePage() throws Exception {
        OpenDoor.Answer page = door.get("/pages/list?from=yesterday");
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.text()).contains("role=\"alert\"", "Give a day such as 2026-01-05.", "value=\"yesterday\"");
        assertThat(door.get("/v1/cases?pacient=x").json().path("remedy").asText())
                .contains("patient");
        assertThat(door.get("/v1/cases?limit=many").status()).isEqualTo(422);
    }

    @Test
    void whatSomebodyTypedIsTextAndNothingElse() throws Exception {
        String nasty = "\\\"><script>alert(1)</script>";
        door.post("/v1/cases", CASE.formatted("c-1", "femoralNerve", nasty));
        assertThat(door.get("/pages/list").text())
                .doesNotContain("<script>alert")
                .contains("&lt;script&gt;alert(1)&lt;/script&gt;");
        assertThat(door.get("/pages/list?patient=%22%3E%3Cscript%3Ealert(1)%3C/script%3E")
                        .text())
                .doesNotContain("<script>alert");
    }

    @ParameterizedTest
    @CsvSource({
        "Sec-Fetch-Site, cross-site",
        "Sec-Fetch-Site, same-site",
        "Origin, https://elsewhere.example",
        "Origin, null",
        "Origin, http://127.0.0.1:1"
    })
    void aPageOfAnotherSiteCannotWrite(String header, String value) throws Exception {
        for (String path :
                new String[] {"/v1/cases", "/v1/dispatch/1/release", "/v1/studies/1.2/marks", "/dicomweb/studies"}) {
            OpenDoor.Answer refused = door.send(door.request(path)
                    .header("Content-Type", "application/json")
                    .header(header, value)
                    .POST(HttpRequest.BodyPublishers.ofString(CASE.formatted("c-1", "femoralNerve", "Doe^Jo"))));
            assertThat(refused.status()).as(path).isEqualTo(403);
            assertThat(refused.json().path("type").asText()).isEqualTo("urn:plumbline:problem:cross-site");
        }
        assertThat(door.get("/v1/cases").json().path("cases")).isEmpty();
    }

    @Test
    void ourOwnPagesAndProgramsWrite() throws Exception {
        String host = door.request("/").build().uri().getAuthority();
        String[][] own = {{"Sec-Fetch-Site", "same-origin"}, {"Origin", "http://" + host}, {"X-Other", "1"}};
        for (int i = 0; i < own.length; i++) {
            OpenDoor.Answer kept = door.send(door.request("/v1/cases")
                    .header("Content-Type", "application/json")
                    .header(own[i][0], own[i][1])
                    .POST(HttpRequest.BodyPublishers.ofString(CASE.formatted("c-" + i, "femoralNerve", "Doe^Jo"))));
            assertThat(kept.status()).as(own[i][0] + kept.text()).isEqualTo(201);
        }
    }

    @Test
    void aFormOfAnotherSiteFindsNoTypeThatItCanSend() throws Exception {
        for (String type : new String[] {"text/plain", "application/x-www-form-urlencoded", "multipart/form-data"}) {
            OpenDoor.Answer refused = door.send(door.request("/v1/cases")
                    .header("Content-Type", type)
                    .POST(HttpRequest.BodyPublishers.ofString(CASE.formatted("c-1", "femoralNerve", "Doe^Jo"))));
            assertThat(refused.status()).isEqualTo(415);
        }
    }

    @Test
    void limitsAndPreferencesOfAnOpenCaseAreSetAnew() throws Exception {
        door.post("/v1/cases", CASE.formatted("c-1", "femoralNerve", "Doe^Jo"));
        String tag = door.get("/v1/cases/c-1").header("ETag");
        OpenDoor.Answer set = door.send(door.request("/v1/cases/c-1/constraints")
                .header("Content-Type", "application/json")
                .header("If-Match", tag)
                .POST(HttpRequest.BodyPublishers.ofString("{\"angleBandDeg\": [25, 50]}")));
        assertThat(set.status()).as(set.text()).isEqualTo(201);
        assertThat(door.get("/v1/cases/c-1")
                        .json()
                        .at("/constraints/angleBandDeg/1")
                        .asInt())
                .isEqualTo(50);
        OpenDoor.Answer bad = door.send(door.request("/v1/cases/c-1/constraints")
                .header("Content-Type", "application/json")
                .header("If-Match", set.header("ETag"))
                .POST(HttpRequest.BodyPublishers.ofString("{\"angleBandDeg\": [50]}")));
        assertThat(bad.status()).isEqualTo(422);
        assertThat(bad.json().path("pointer").asText()).isEqualTo("/angleBandDeg");
    }
}
