// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.record.CaseDocument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How much of the search for the needle stands in the report's bytes, and what comes back of it. */
class SightInRecordTest {
    private static final List<String> WITHOUT_SIGHT = List.of("e1", "e2", "e5", "e6", "e7", "e8", "e9", "e10", "e11");
    private static final List<String> ALL = List.of("e1", "e2", "e3", "e4", "e5", "e6", "e7", "e8", "e9", "e10", "e11");

    @TempDir
    Path folder;

    private static CaseDocument bedside(String detail) {
        ObjectNode json = CaseJson.write(RecordFixtures.BEDSIDE.document());
        json.withObjectProperty("record").put("sightDetail", detail);
        return CaseJson.read(json, Door.HTTP);
    }

    private DataSet report(CaseDocument document) throws IOException {
        RecordSource source = new RecordSource(
                RecordFixtures.revision(document), RecordFixtures.INSTALLATION, RecordFixtures.frames());
        byte[] bytes = DicomFile.encode(RecordComposer.report(source, FramesUsed.of(source)));
        return DicomFile.open(Files.write(folder.resolve("record.dcm"), bytes)).header();
    }

    private static ContentItem details(DataSet report) {
        return ContentReader.read(report).first(Concepts.PROCEDURE).orElseThrow();
    }

    private static List<String> notesOfTheView(DataSet report) {
        return details(report).first(Codes.own("SIGHT")).orElseThrow().children().stream()
                .filter(EventItems::isSight)
                .map(item -> item.textOf(Codes.own("EVENT-ID")).orElseThrow())
                .toList();
    }

    private static boolean saysTipAtInjection(DataSet report) {
        return details(report)
                .first(Codes.own("SIGHT"))
                .orElseThrow()
                .first(Codes.own("TIP-AT-INJECT"))
                .isPresent();
    }

    private static boolean saysTimeUnseen(DataSet report) {
        return details(report).first(Codes.own("T-UNSEEN")).isPresent();
    }

    private static List<String> eventsReadBack(DataSet report) {
        return CaseJson.write(RecordReader.read(report)).path("events").findValuesAsText("id");
    }

    /** All but the events is as it was; of the events, those named, each unchanged. */
    private static void comesBack(CaseDocument document, DataSet report, List<String> kept) {
        ObjectNode stated = CaseJson.write(document);
        ObjectNode read = CaseJson.write(RecordReader.read(report));
        List<String> events = new ArrayList<>();
        stated.path("events").forEach(event -> {
            if (kept.contains(event.path("id").asText())) {
                events.add(event.toString());
            }
        });
        List<String> back = new ArrayList<>();
        read.path("events").forEach(event -> back.add(event.toString()));
        assertThat(back).isEqualTo(events);
        stated.remove("events");
        read.remove("events");
        assertThat(CaseJson.canonical(CaseJson.read(read, Door.HTTP)))
                .isEqualTo(CaseJson.canonical(CaseJson.read(stated, Door.HTTP)));
    }

    @Test
    void fullHoldsEveryNoteOfTheView() throws IOException {
        DataSet report = report(bedside("full"));
        assertThat(notesOfTheView(report)).containsExactly("e3", "e4");
        assertThat(saysTipAtInjection(report)).isTrue();
        assertThat(saysTimeUnseen(report)).isTrue();
        assertThat(eventsReadBack(report)).isEqualTo(ALL);
        comesBack(bedside("full"), report, ALL);
    }

    @Test
    void summaryHoldsOnlyWhetherTheTipWasSeenAtInjection() throws IOException {
        DataSet report = report(bedside("summary"));
        assertThat(notesOfTheView(report)).isEmpty();
        assertThat(saysTipAtInjection(report)).isTrue();
        assertThat(saysTimeUnseen(report)).isFalse();
        assertThat(eventsReadBack(report)).isEqualTo(WITHOUT_SIGHT);
        comesBack(bedside("summary"), report, WITHOUT_SIGHT);
    }

    @Test
    void noneHoldsNothingOfTheSearch() throws IOException {
        DataSet report = report(bedside("none"));
        assertThat(notesOfTheView(report)).isEmpty();
        assertThat(saysTipAtInjection(report)).isFalse();
        assertThat(saysTimeUnseen(report)).isFalse();
        assertThat(eventsReadBack(report)).isEqualTo(WITHOUT_SIGHT);
        comesBack(bedside("none"), report, WITHOUT_SIGHT);
    }

    @Test
    void theSitesChoiceCountsWhereTheCaseSaysNothing() throws IOException {
        ObjectNode json = CaseJson.write(RecordFixtures.BEDSIDE.document());
        json.remove("record");
        CaseDocument document = CaseJson.read(json, Door.HTTP);
        DataSet report = report(document); // the fixtures' installation says summary
        assertThat(notesOfTheView(report)).isEmpty();
        assertThat(saysTipAtInjection(report)).isTrue();
        assertThat(CaseJson.write(RecordReader.read(report)).has("record")).isFalse();
    }

    @Test
    void whiteSpaceAroundWordsNeverBecomesPartOfACase() throws IOException {
        ObjectNode json = CaseJson.write(RecordFixtures.BEDSIDE.document());
        json.put("impression", "  As planned. ");
        json.withObjectProperty("context").put("indication", " Hand  surgery ");
        json.withObjectProperty("context").putArray("lots").add(" LOT-1 ").add("LOT-2\u3000");
        ((ObjectNode) json.path("team").get(0)).put("name", " Roe^Al ");
        CaseDocument taken = CaseJson.read(json, Door.HTTP);
        ObjectNode written = CaseJson.write(taken);
        assertThat(written.path("impression").asText()).isEqualTo("As planned.");
        assertThat(written.path("context").path("indication").asText()).isEqualTo("Hand  surgery");
        assertThat(written.path("context").path("lots").toString()).isEqualTo("[\"LOT-1\",\"LOT-2\"]");
        assertThat(CaseJson.canonical(RecordReader.read(report(taken)))).isEqualTo(CaseJson.canonical(taken));
    }
}
