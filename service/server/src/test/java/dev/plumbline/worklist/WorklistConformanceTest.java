// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.worklist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dimse.Peer;
import dev.plumbline.dimse.Requestor;
import dev.plumbline.dimse.Timeouts;
import dev.plumbline.peer.PeerProcess;
import dev.plumbline.peer.ScheduledItem;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Answered by DCMTK's wlmscpfs: PS3.4, annex K. */
class WorklistConformanceTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-01-05T09:30:00Z"), ZoneOffset.ofHours(1));

    @TempDir
    Path folder;

    private static Worklist worklist(int port) {
        return new Worklist(
                "ris",
                new Requestor("PLUMBLINE", Timeouts.USUAL),
                new Peer("WLSCP", "127.0.0.1", port, Optional.empty()),
                CLOCK);
    }

    @Test
    void asksForTheProceduresOfADay() throws Exception {
        new ScheduledItem("1", "20260105", "INVENTED-1", "2.25.1001", "ACC-1").schedule(folder);
        new ScheduledItem("2", "20260106", "INVENTED-2", "2.25.1002", "ACC-2").schedule(folder);
        int port = PeerProcess.freePort();
        try (PeerProcess ris = PeerProcess.start(
                folder,
                port,
                List.of("wlmscpfs", "-dfp", ScheduledItem.served(folder).toString(), "-dfr", Integer.toString(port)))) {
            Worklist.Day today = worklist(ris.port()).scheduled(Optional.empty());
            assertThat(today.procedures()).hasSize(1);
            ScheduledProcedure procedure = today.procedures().get(0);
            assertThat(procedure.patient().id()).isEqualTo("INVENTED-1");
            assertThat(procedure.order().accessionNumber()).isEqualTo("ACC-1");
            assertThat(procedure.order().studyInstanceUid()).isEqualTo("2.25.1001");
            assertThat(procedure.order().requestedProcedureId()).isEqualTo("RP-1");
            assertThat(procedure.step().id()).isEqualTo("SPS-1");
            assertThat(WorklistJson.of(today).at("/items/0/startTime").asText()).isEqualTo("10:15:00");
            assertThat(worklist(ris.port())
                            .scheduled(Optional.of(LocalDate.of(2026, 1, 7)))
                            .procedures())
                    .isEmpty();
        }
    }

    /** As wlmscpfs does by default: the name in Latin 1, and no word of a character set. */
    @Test
    void aNameInCharactersThatAreNotDeclaredIsLeftOutAndToldNotGuessed() throws Exception {
        new ScheduledItem("1", "20260105", "INVENTED-1", "2.25.1001", "ACC-1").schedule(folder);
        Path item = folder.resolve("1.dump");
        String dump = Files.readString(item).replace("Invented^Person", "M\u00fcller^J\u00f6rg");
        Files.writeString(item, "(0008,0005) CS [ISO_IR 100]\n" + dump, StandardCharsets.ISO_8859_1);
        Path served = ScheduledItem.served(folder).resolve("WLSCP/1.wl");
        assertThat(PeerProcess.run(folder, List.of("dump2dcm", "-g", item.toString(), served.toString()))
                        .code())
                .isZero();
        for (boolean declared : List.of(true, false)) {
            int port = PeerProcess.freePort();
            try (PeerProcess ris = PeerProcess.start(
                    folder,
                    port,
                    List.of(
                            "wlmscpfs",
                            declared ? "-csk" : "-cs0",
                            "-dfp",
                            ScheduledItem.served(folder).toString(),
                            "-dfr",
                            Integer.toString(port)))) {
                ObjectNode day = WorklistJson.of(worklist(ris.port()).scheduled(Optional.empty()));
                assertThat(day.at("/items/0/patient/id").asText()).isEqualTo("INVENTED-1");
                assertThat(day.at("/items/0/patient/name").textValue())
                        .isEqualTo(declared ? "M\u00fcller^J\u00f6rg" : null);
                assertThat(day.at("/items/0/order/patient").has("name")).isEqualTo(declared);
                assertThat(day.at("/items/0/unreadable/0").asText()).isEqualTo(declared ? "" : "patient.name");
                assertThat(day.path("text").asText().contains("Specific Character Set"))
                        .isEqualTo(!declared);
            }
        }
    }

    @Test
    void saysInWordsThatNobodyAnswers() {
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> worklist(1).scheduled(Optional.empty()));
        assertThat(refusal.problem()).isInstanceOf(Problem.Unavailable.class);
        assertThat(refusal.problem().detail()).contains("ris", "Nothing listens");
    }
}
