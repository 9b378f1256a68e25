// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.SampleCases;
import dev.plumbline.dicom.SampleObjects;
import dev.plumbline.document.CaseJson;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Cautions;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleSet;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * The whole job on two invented cases, played through the doors of a running service: frames in, plan and observation
 * compared, record signed, read back from the archive.
 */
final class Demo {
    private static final long SEED = 1;
    private static final String ANNOTATED_FRAME = "US";

    private final DemoClient client;
    private final Path out;
    private final PrintWriter say;
    private final SampleSet samples = new SampleSet(SEED);

    /** @param out where products are written */
    Demo(DemoClient client, Path out, PrintWriter say) {
        this.client = client;
        this.out = out;
        this.say = say;
    }

    void play() throws IOException {
        SampleCases cases = SampleCases.held(samples);
        play(
                "in-plane",
                "In-plane: target 30 mm deep, entry meant 45 mm from the midpoint",
                List.of(samples.inPlanePlan(), samples.inPlaneNeedle()),
                cases.inPlane());
        play(
                "out-of-plane",
                "Out-of-plane: target 20 mm deep, puncture meant 20 mm from the beam",
                List.of(samples.outOfPlanePlan(), samples.outOfPlaneNeedle()),
                cases.outOfPlane());
        say.println();
        say.println(Cautions.text());
    }

    /**
     * Puts two more frames in, of which nothing is known yet: to be drawn on in a viewer.
     *
     * @return their study
     */
    String toDrawOn() {
        SampleSet others = new SampleSet(SEED + 1); // a study of its own: the cases that were played are signed
        SampleObjects objects = new SampleObjects(others);
        for (Sample sample : List.of(others.inPlanePlan(), others.inPlaneNeedle())) {
            client.postDicom("/v1/frames", objects.file(sample));
        }
        return client.getJson("/dicomweb/instances?SOPInstanceUID=" + objects.sopInstanceUid(others.inPlanePlan()))
                .at("/0/0020000D/Value/0")
                .asText();
    }

    private void play(String name, String title, List<Sample> frames, CaseDocument document) throws IOException {
        say.println();
        say.println(title);
        Path folder = Files.createDirectories(out.resolve(name));
        for (Sample sample : frames) {
            byte[] file = new SampleObjects(samples).file(sample);
            Files.write(folder.resolve(sample.name() + ".dcm"), file);
            client.postDicom("/v1/frames", file);
        }
        ObjectNode json = CaseJson.write(document);
        Files.writeString(folder.resolve("case.json"), json.toPrettyString() + "\n");
        JsonNode comparison = client.postJson("/v1/comparisons", json.toString());
        Files.writeString(folder.resolve("comparison.json"), comparison.toPrettyString() + "\n");
        say.println();
        say.println("    " + comparison.path("plan").path("text").asText());
        say.println();
        DemoTable.lines(comparison).forEach(say::println);
        readBack(client.postJson("/v1/records", json.toString()), folder);
    }

    /** Fetches everything the record consists of from the archive, as a viewer would. */
    private void readBack(JsonNode record, Path folder) throws IOException {
        String report = record.path("recordUid").asText();
        say.println();
        say.println("    record    " + client.uri("/v1/records/" + report));
        for (JsonNode object : record.path("objects")) {
            String uid = object.asText();
            JsonNode found = client.getJson("/dicomweb/instances?SOPInstanceUID=" + uid + "&includefield=00080060")
                    .path(0);
            String address = "/dicomweb/studies/" + value(found, "0020000D") + "/series/" + value(found, "0020000E")
                    + "/instances/" + uid;
            String modality = value(found, "00080060");
            Path file = folder.resolve(name(modality, uid) + ".dcm");
            Files.write(file, client.retrieve(address));
            say.println("    archive   " + client.uri(address));
            say.println("    file      " + file);
            if (modality.equals(ANNOTATED_FRAME)) {
                Path picture = folder.resolve(name(modality, uid) + ".png");
                Files.write(picture, client.get(address + "/rendered", "image/png"));
                say.println("    picture   " + picture);
            }
        }
        Path page = folder.resolve("record.pdf");
        Files.write(page, client.get("/v1/records/" + report, "application/pdf"));
        say.println("    page      " + page);
    }

    /** By the modality (0008,0060), which tells the objects of a record apart; there may be several pictures. */
    private static String name(String modality, String uid) {
        String number = uid.substring(uid.length() - 6);
        return switch (modality) {
            case "SR" -> "record";
            case ANNOTATED_FRAME -> "annotated-" + number;
            case "PR" -> "presentation-" + number;
            case "DOC" -> "page";
            case "KO" -> "key-objects";
            default -> "object-" + number;
        };
    }

    private static String value(JsonNode instance, String tag) {
        return instance.path(tag).path("Value").path(0).asText();
    }
}
