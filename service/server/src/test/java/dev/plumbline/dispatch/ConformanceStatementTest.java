// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.dicom.TransferSyntax;
import dev.plumbline.dimse.Listener;
import dev.plumbline.dimse.SopClass;
import dev.plumbline.dimse.Status;
import dev.plumbline.dimse.Timeouts;
import java.io.IOException;
import java.lang.reflect.Field;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The tables of the conformance statement say what the program does. */
class ConformanceStatementTest {
    @Test
    void everyStatusHasItsLine() throws IOException {
        List<String> expected = Arrays.stream(Status.values())
                .map(status -> "| " + status.pattern() + " | " + status.words() + " | "
                        + Verdicts.of(status).words() + " |")
                .toList();
        List<String> table = Files.readAllLines(root().resolve("docs/conformance.md")).stream()
                .dropWhile(line -> !line.startsWith("| C-STORE status |"))
                .skip(2)
                .takeWhile(line -> line.startsWith("|"))
                .toList();
        assertThat(table).containsExactlyElementsOf(expected);
    }

    @Test
    void everyObjectOfARecordIsVerified() throws IOException {
        String text = statement();
        PeerCheck.RECORD_CLASSES.values().forEach(name -> assertThat(text).contains(name.replace(" Image", "")));
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

    @Test
    void limitsAndWaitsAreTheUsualOnes() throws IOException {
        String text = statement().replaceAll("\\s+", " ");
        Timeouts usual = Timeouts.USUAL;
        assertThat(text)
                .contains(Listener.Limits.USUAL.associations() + " associations at once, "
                        + Listener.Limits.USUAL.perPeer() + " from one AE title")
                .contains("ask for an association within " + usual.artim().toSeconds() + " s")
                .contains("silent for " + usual.idle().toSeconds() + " s")
                .contains("after " + Backoff.FIRST.toSeconds() + " s, doubled each time")
                .contains("at most " + Backoff.LONGEST.toMinutes() + " minutes");
    }

    private static String statement() throws IOException {
        return Files.readString(root().resolve("docs/conformance.md"));
    }

    private static List<String> tableAfter(String head) throws IOException {
        return statement()
                .lines()
                .dropWhile(line -> !line.startsWith(head))
                .skip(2)
                .takeWhile(line -> line.startsWith("|"))
                .toList();
    }

    private static Path root() {
        return Stream.iterate(Path.of("").toAbsolutePath(), Path::getParent)
                .takeWhile(folder -> folder != null)
                .filter(folder -> Files.isDirectory(folder.resolve("docs/adr")))
                .findFirst()
                .orElseThrow();
    }
}
