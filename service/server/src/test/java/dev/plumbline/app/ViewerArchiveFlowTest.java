// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static dev.plumbline.app.ViewerStudy.OBSERVED;
import static dev.plumbline.app.ViewerStudy.PLANNED;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.config.Network;
import dev.plumbline.config.ProofBy;
import dev.plumbline.config.SitePeer;
import dev.plumbline.peer.OrthancPeer;
import dev.plumbline.peer.PeerProcess;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The viewer knows an archive of others only (Debian's Orthanc), as in a hospital: the archive forwards frames and drawn
 * reports to us by C-STORE, our signed record goes there, and the viewer shows it from there.
 */
class ViewerArchiveFlowTest {
    private static final long LIMIT_SECONDS = 60;

    @TempDir
    Path folder;

    @Test
    void theLoopClosesOverAnArchiveOfOthers() throws Exception {
        int ours = PeerProcess.freePort();
        try (OrthancPeer orthanc = OrthancPeer.forwarding(folder, ours);
                ViewerStudy study = ViewerStudy.empty(folder.resolve("data"), network(ours, orthanc))) {
            for (byte[] frame : ViewerStudy.frames()) {
                store(orthanc, frame);
            }
            await("frames forwarded to us", () -> instances(study, "US") == 2);
            URI archive = URI.create("http://127.0.0.1:" + orthanc.httpPort() + "/");

            Sitting drawn = Sitting.at(archive, "draw.mjs", "archive-draw", study.uid(), ViewerStudy.drawing());
            drawn.assertNothingWasRefused();
            await("the drawn report forwarded to us", () -> instances(study, "SR") == 1);
            JsonNode account = study.assertDrawnMarksAreTheCases();

            study.signed(account);
            await("the record proved to be there", () -> {
                JsonNode counts = study.client.getJson("/v1/dispatch").path("counts");
                return counts.path("proved").asInt() == 1;
            });
            Sitting again = Sitting.at(archive, "look.mjs", "archive-again", study.uid(), PLANNED, OBSERVED);
            again.assertNothingWasRefused();
            study.assertRecordIsShown(again, account);
        }
    }

    private static Network network(int ours, OrthancPeer orthanc) {
        SitePeer archive = new SitePeer(
                "pacs",
                Optional.of(new SitePeer.Dicom(
                        OrthancPeer.AE_TITLE,
                        Optional.of(new SitePeer.Place("127.0.0.1", orthanc.dicomPort(), Optional.empty())),
                        new SitePeer.CalledFrom(List.of("127.0.0.1"), List.of(), OptionalLong.empty()),
                        ProofBy.GET)),
                Optional.empty(),
                List.of(SitePeer.Use.ARCHIVE));
        return new Network(
                "PLUMBLINE",
                Network.Waits.USUAL,
                Optional.of(new Network.Door("127.0.0.1", ours, Optional.empty(), 10, 10)),
                List.of(archive));
    }

    private static int instances(ViewerStudy study, String modality) {
        String search = "/dicomweb/instances?Modality=" + modality;
        byte[] found = study.client.get(search, "application/dicom+json");
        return found.length == 0 ? 0 : study.client.getJson(search).size(); // none is no content
    }

    /** As a scanner's images come to the archive, by whatever door. */
    private static void store(OrthancPeer orthanc, byte[] file) throws Exception {
        int status = HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + orthanc.httpPort() + "/instances"))
                                .POST(BodyPublishers.ofByteArray(file))
                                .build(),
                        BodyHandlers.discarding())
                .statusCode();
        assertThat(status).isEqualTo(200);
    }

    private static void await(String what, BooleanSupplier there) throws InterruptedException {
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(LIMIT_SECONDS);
        while (!there.getAsBoolean()) {
            assertThat(System.nanoTime()).as(what + " in time").isLessThan(deadline);
            Thread.sleep(100);
        }
    }
}
