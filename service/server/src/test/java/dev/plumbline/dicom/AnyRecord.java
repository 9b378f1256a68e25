// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.document.CaseDocuments;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.procedure.Happening;
import dev.plumbline.procedure.LoggedEvent;
import dev.plumbline.record.Bedside;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Signature;
import java.awt.image.BufferedImage;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

/** Records of case documents at random, with numbers at random; any seed gives one that can be written. */
final class AnyRecord {
    private static final FrameGeometry BARE =
            new FrameGeometry(640, 640, List.of(), Optional.empty(), Optional.empty(), "bare");
    private static final RecordFrames FRAMES = ref -> new RecordFrame(
            RecordFixtures.header("2.25.2").put(Tag.SOP_INSTANCE_UID, ref.sopInstanceUid()),
            ref.scale().isPresent() ? BARE : RecordFixtures.geometry(),
            new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB));

    private AnyRecord() {}

    /** One with everything that can be said at the bedside. */
    static RecordSource of(long seed) {
        return of(recordableAtTheBedside(CaseDocuments.atTheBedside(seed)), seed);
    }

    /**
     * A revision that can be drawn, with what the engine makes of it: a fixture with its marks and its entry moved, and
     * anything said at the bedside.
     *
     * @throws dev.plumbline.problem.Refusal where the moved marks cannot be measured
     */
    static RecordRevision moved(long seed) {
        Random random = new Random(seed);
        RecordFixtures[] fixtures = RecordFixtures.values();
        ObjectNode json = CaseJson.write(fixtures[random.nextInt(fixtures.length)].document());
        json.put("caseId", "case-" + Long.toUnsignedString(seed));
        move(json.path("marks").path("target"), random);
        json.path("observations").forEach(observation -> {
            move(observation.path("tip"), random);
            observation.path("shaft").forEach(point -> move(point, random));
        });
        JsonNode intent = json.path("intent");
        if (intent.has("entryDistanceMm")) {
            ((ObjectNode) intent).put("entryDistanceMm", 8 + 30 * random.nextDouble());
        }
        CaseDocument document = CaseJson.read(json, Door.HTTP);
        Bedside bedside = consistent(CaseDocuments.atTheBedside(seed).bedside());
        return RecordFixtures.revision(document.withBedside(bedside));
    }

    private static void move(JsonNode point, Random random) {
        if (point.has("row")) {
            ((ObjectNode) point)
                    .put("column", point.get("column").asDouble() + 30 * random.nextDouble() - 15)
                    .put("row", point.get("row").asDouble() + 30 * random.nextDouble() - 15);
        }
    }

    static RecordSource of(CaseDocument document, long seed) {
        OffsetDateTime time =
                document.signature().map(Signature::time).orElse(OffsetDateTime.parse("2026-01-05T10:20:00+01:00"));
        RecordRevision revision = new RecordRevision(
                document.caseId().orElseThrow(), 1, document, AnyComparison.of(document, new Random(seed)), time);
        return new RecordSource(revision, RecordFixtures.INSTALLATION, FRAMES);
    }

    /** As a record needs it: every frame of an object, an identifier, and roles that have a code. */
    static CaseDocument recordable(CaseDocument document) {
        ObjectNode json = CaseJson.write(document);
        json.put("caseId", json.path("caseId").asText("case-of-chance"));
        held(json);
        json.path("observations").forEach(AnyRecord::held);
        role(json.path("context").path("operator"), "performer");
        role(json.path("signature"), "verifier");
        return CaseJson.read(json, Door.HTTP);
    }

    private static void held(JsonNode holder) {
        if (!holder.path("frame").has("sopInstanceUid")) {
            ((ObjectNode) holder)
                    .putObject("frame")
                    .put("sopInstanceUid", "2.25.77")
                    .put("frameNumber", 3);
        }
    }

    private static void role(JsonNode person, String role) {
        if (person.has("role")) {
            ((ObjectNode) person).put("role", role);
        }
    }

    static CaseDocument recordableAtTheBedside(CaseDocument document) {
        CaseDocument recordable = recordable(document);
        return recordable.withBedside(consistent(recordable.bedside()));
    }

    /** As the doors let it in: corrections of something that stands, and no mixture without its volume. */
    private static Bedside consistent(Bedside bedside) {
        List<LoggedEvent> events = new ArrayList<>();
        Set<String> corrected = new HashSet<>();
        for (LoggedEvent event : bedside.events()) {
            if (!(event.what() instanceof Happening.Correction correction)
                    || (events.stream().anyMatch(e -> e.id().equals(correction.corrects()))
                            && corrected.add(correction.corrects()))) {
                events.add(event);
            }
        }
        return new Bedside(
                bedside.session(),
                bedside.team(),
                bedside.checks(),
                events,
                bedside.agents().stream()
                        .filter(entry -> entry.handling().mixture().isEmpty())
                        .toList(),
                bedside.surroundings(),
                bedside.impression(),
                bedside.sightDetail(),
                bedside.frames());
    }
}
