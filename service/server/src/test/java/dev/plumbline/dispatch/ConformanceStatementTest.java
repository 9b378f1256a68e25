// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.config.Network;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.dicom.TransferSyntax;
import dev.plumbline.dimse.Listener;
import dev.plumbline.dimse.SopClass;
import dev.plumbline.dimse.Timeouts;
import java.io.IOException;
import java.lang.reflect.Field;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The tables of the conformance statement say what the program does. */
class ConformanceStatementTest {
    @Test
    void itsTablesAreMadeFromTheProgram() throws IOException {
        String page = statement();
        ConformanceTables.tables().keySet().forEach(name -> assertThat(page).contains("<!-- table: " + name + " -->"));
        assertThat(page)
                .as("ConformanceTables.main makes them again")
                .isEqualTo(ConformanceTables.made(page))
                .doesNotContain("no such table");
    }

    /** The chapters of the template in DICOM PS3.2. */
    @Test
    void itHasTheChaptersOfTheTemplate() throws IOException {
        assertThat(statement().lines().filter(line -> line.startsWith("## ")))
                .containsExactly(
                        "## 1 Overview",
                        "## 2 Contents",
                        "## 3 Introduction",
                        "## 4 Implementation model",
                        "## 5 Application entity specifications",
                        "## 6 DICOMweb",
                        "## 7 Network interfaces and configuration",
                        "## 8 Media interchange",
                        "## 9 Character sets",
                        "## 10 Security",
                        "## 11 Annexes");
    }

    @Test
    void everyLinkIntoItselfLeadsSomewhere() throws IOException {
        String page = statement();
        List<String> anchors = page.lines()
                .filter(line -> line.startsWith("#"))
                .map(line -> line.replaceFirst("^#+ ", "")
                        .toLowerCase(Locale.ROOT)
                        .replaceAll("[^a-z0-9 -]", "")
                        .replace(' ', '-'))
                .toList();
        assertThat(Pattern.compile("\\]\\(#([^)]+)\\)").matcher(page).results().map(link -> link.group(1)))
                .isNotEmpty()
                .allMatch(anchors::contains);
    }

    @Test
    void everyServiceHasItsLine() throws Exception {
        List<String> services = new ArrayList<>();
        for (Field field : SopClass.class.getFields()) {
            if (field.getType() == String.class && !field.getName().endsWith("_INSTANCE")) {
                services.add((String) field.get(null));
            }
        }
        assertThat(services).hasSizeGreaterThan(5);
        List<String> table = tableAfter("| service | SOP class |");
        for (String uid : services) {
            String plain = uid.equals(SopClass.STORAGE_ROOT) ? uid.replaceFirst("\\.$", "") : uid;
            assertThat(table)
                    .filteredOn(line -> line.contains(plain + " |") || line.contains(plain + ","))
                    .as(plain)
                    .hasSize(1);
        }
        // what is listed as provided is what an association request is answered with, and nothing else
        assertThat(table).filteredOn(line -> line.endsWith("| no |")).hasSize(4);
    }

    @Test
    void everyTransferSyntaxThatIsTakenHasItsLine() throws IOException {
        String table = String.join("\n", tableAfter("| transfer syntax |"));
        Pattern uid = Pattern.compile("1\\.2\\.840\\.10008\\.1\\.2[0-9.]*(?=[,)])");
        assertThat(uid.matcher(table).results().map(MatchResult::group))
                .containsExactlyInAnyOrderElementsOf(Arrays.stream(TransferSyntax.values())
                        .map(TransferSyntax::uid)
                        .toList());
    }

    /** What a site gets that states nothing is what the layer itself calls usual, and what the statement says. */
    @Test
    void limitsAndWaitsOfTheConfigurationAreTheUsualOnes(@TempDir Path folder) throws IOException {
        Path config = Files.writeString(
                folder.resolve("plumbline.json"), "{\"schema\":\"plumbline-service/1\",\"dicom\":{\"port\":0}}");
        Network network = ServiceConfig.read(config).network();
        Network.Door door = network.door().orElseThrow();
        assertThat(new SitePeers(network, FiledRecords.CLOCK).timeouts()).isEqualTo(Timeouts.USUAL);
        assertThat(new Listener.Limits(door.associations(), door.perPeer())).isEqualTo(Listener.Limits.USUAL);
    }

    @Test
    void backoffIsTheUsualOne() throws IOException {
        assertThat(statement().replaceAll("\\s+", " "))
                .contains("after " + Backoff.FIRST.toSeconds() + " s, doubled each time")
                .contains("at most " + Backoff.LONGEST.toMinutes() + " minutes");
    }

    private static String statement() throws IOException {
        return Files.readString(ConformanceTables.page());
    }

    private static List<String> tableAfter(String head) throws IOException {
        return statement()
                .lines()
                .dropWhile(line -> !line.startsWith(head))
                .skip(2)
                .takeWhile(line -> line.startsWith("|"))
                .toList();
    }
}
